/**
 * What it knows: the second clock, which acknowledging starts. Somebody has seen it; whether anything comes of that,
 * the value says, and where it does not turn in time the alarm calls again.
 * What it leaves out: what is done about it, which people do.
 * Where the numbers come from: common practice, no source, where neither the definition nor the review says.
 */
import type { SensorQuantity } from '../facility/system';
import type { Limits } from './condition';

/** Minutes in which what is watched should turn once somebody is at it, by what is measured. */
const TURNS_MIN: Readonly<Partial<Record<SensorQuantity, number>>> = {
  oxygen: 15,
  'oxygen-saturation': 15,
  oxidant: 15,
  leak: 15,
  flow: 15,
  watts: 15,
  level: 20,
  temperature: 45,
  'carbon-dioxide': 30,
  ph: 60,
  redox: 60,
  salinity: 120,
  conductivity: 120,
};
/** Minutes of what stands in no line above, silence among it. */
const USUAL_MIN = 30;
/** Least minutes: the clock must leave time to walk there. */
const LEAST_MIN = 5;

/**
 * Minutes from an acknowledgement within which the value should turn. Where the review knows how long there is from the alarm
 * to the last chance, half of that at most: when the clock runs out there must be time left to do something else.
 *
 * @param quantity    what is measured; left out for silence
 * @param availableS  s from the alarm to the last chance in its gravest fault case, by the review; null: it knows of none
 */
export function turnsWithinMin(quantity: SensorQuantity | undefined, availableS: number | null = null): number {
  const usual = quantity === undefined ? USUAL_MIN : (TURNS_MIN[quantity] ?? USUAL_MIN);
  const half = availableS === null ? Number.POSITIVE_INFINITY : availableS / 120;
  return Math.max(Math.min(usual, half), LEAST_MIN);
}

/** How far beyond its limits a value is, in its unit; 0 or less inside. */
function beyond({ above = Infinity, below = -Infinity }: Pick<Limits, 'above' | 'below'>, value: number): number {
  return Math.max(value - above, below - value);
}

/**
 * Whether a value has turned: it is inside its limit again, though the alarm may not have cleared, or nearer to it than it was
 * by half its dead band at least. Nothing known of either has not turned.
 *
 * @param then   the newest value when it was acknowledged, or when the clock last ran out
 * @param now    the newest since
 */
export function hasTurned(
  limits: Pick<Limits, 'above' | 'below' | 'deadBand'>,
  then: number | null,
  now: number | null,
): boolean {
  if (now === null) return false;
  const left = beyond(limits, now);
  if (left <= 0) return true;
  return then !== null && left < beyond(limits, then) - limits.deadBand / 2;
}
