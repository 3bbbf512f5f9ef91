import type { Point, Span } from './stretch';

/** What is fitted. */
export const CALIBRATIONS = ['heat-loss', 'evaporation', 'oxygen-transfer', 'oxygen-use'] as const;
export type Calibration = (typeof CALIBRATIONS)[number];

/** A reading beside the curve that was laid through it. */
export interface FittedPoint extends Point {
  fitted: number;
}

/** One stretch with what it says by itself. */
export interface FittedStretch extends Span {
  key: string;
  /** What marks it, in words. */
  what: string;
  points: FittedPoint[];
  /** In the unit of the fit; null where the stretch alone says nothing. */
  value: number | null;
  error: number | null;
  /** Standard deviation of the readings about the curve, in their unit. */
  sd: number | null;
  /** Somebody left it out. */
  isLeftOut: boolean;
}

/** Something that makes the answer uncertain, as half the width of the interval it alone would give. */
export interface Doubt {
  from: string;
  half: number;
}

/** What readings say of one figure. */
export interface Found {
  is: Calibration;
  unit: string;
  value: number;
  /** Ends of the interval of 95 %. */
  low: number;
  high: number;
  doubts: Doubt[];
  /** The same figure as the model has it. */
  inUse: number;
}

/** Half of an interval as a part of the figure, beyond which the readings do not tell it. Common practice, no source. */
export const MOST_DOUBT = 0.8;

/** The doubt that widens an interval most. @param doubts   at least one */
export function greatest(doubts: readonly Doubt[]): Doubt {
  return doubts.reduce((most, one) => (one.half > most.half ? one : most));
}

/** Half the width of an interval made of several independent doubts: the root of the sum of their squares. */
export function halfOf(doubts: readonly Doubt[]): number {
  return Math.sqrt(doubts.reduce((sum, { half }) => sum + half * half, 0));
}
