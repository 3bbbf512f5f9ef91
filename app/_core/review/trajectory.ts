import type { LimitQuantity } from '../facility/stock';

/** One quantity of one tank over the course of a fault case. Units: °C, mm from the running level, practical salinity, mg/L. */
export interface Track {
  tank: string;
  quantity: 'temperature' | 'level' | 'salinity' | 'oxygen';
  timesS: number[];
  values: number[];
  /** Limits of tolerance drawn beside it. */
  limits: { quantity: LimitQuantity; value: number; direction: 'above' | 'below'; forMin: number }[];
}

/** A moment on the time axis, seconds after the fault begins. */
export interface Moment {
  kind: 'begins' | 'noticed' | 'last-chance' | 'put-right' | 'harm' | 'event';
  atS: number;
  label: string;
}

/** What a fault case does when nobody comes, from one onset hour, with its moments. */
export interface CaseTrajectory {
  /** Hour of the week at which the fault begins, 0 = Monday 00:00. */
  onsetHour: number;
  endS: number;
  tracks: Track[];
  moments: Moment[];
}
