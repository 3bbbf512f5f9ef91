import type { Calibration, Doubt, FittedStretch, Found } from '#core/calibration/found';
import type { Target } from '#core/calibration/target';

/** A stretch with when it was, on the site's clock. */
export interface StretchView extends FittedStretch {
  fromThere: string;
  toThere: string;
}

/** One figure with what the readings say of it. */
export interface FitView {
  is: Calibration;
  from: string[];
  how: string;
  stretches: StretchView[];
  found: (Omit<Found, 'doubts'> & { doubts: Doubt[] }) | null;
  target: Target | null;
  refused: string[];
}

/** What the page is made from. */
export interface CalibrationView {
  site: { key: string; name: string; zone: string };
  system: { key: string; name: string };
  days: number;
  untilMs: number;
  first: string;
  last: string;
  out: string[];
  fits: FitView[];
  mayDescribe: boolean;
}
