/**
 * What this room knows: what a reading is, how far it can be trusted and why, and the units it may come in.
 * What it leaves out: where it is kept, and what an alarm makes of it.
 * Where the numbers come from: the instruments, and for what is possible the sources named beside each figure.
 */

/** How far a reading can be trusted. A suspect one may call somebody and never silences an alarm; a bad one does neither. */
export const QUALITIES = ['good', 'suspect', 'bad'] as const;
export type Quality = (typeof QUALITIES)[number];

/** How a reading came: from a device by itself, from a file of a logger, or from a person who looked. */
export const ORIGINS = ['device', 'file', 'hand'] as const;
export type Origin = (typeof ORIGINS)[number];

/** One reading of one sensor. */
export interface Reading {
  /** Id of the sensor. */
  sensor: string;
  /** When it was taken, ms since 1970. */
  atMs: number;
  /** In the unit of the sensor's quantity. */
  value: number;
  quality: Quality;
  /** Why it is not good; absent when it is. */
  reason?: string;
  origin: Origin;
}
