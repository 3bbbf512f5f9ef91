/**
 * What this room knows: how a site is described by its people, before any default is filled in.
 * What it leaves out: physics, which reads the figures only after `equipment/resolve` has filled and converted them.
 * Where the numbers come from: every one is a `Figure` and says so itself.
 */

/** Where a figure comes from. `unknown` is said out loud and never silently filled in. */
export type Origin = 'measured' | 'entered' | 'default' | 'unknown';

/**
 * One number with its provenance. The unit is the end of the field's name (`volumeL`, `flowLPerH`).
 * `low` and `high` are the plausible range, used on the bad side for each harm; absent means the number is taken as exact.
 */
export interface Figure {
  value: number | null;
  origin: Origin;
  low?: number;
  high?: number;
  source?: string;
}

/** A figure that is the same all day, or 24 values for the hours beginning 00:00 to 23:00 local time. */
export type ByHour = Figure | number[];
