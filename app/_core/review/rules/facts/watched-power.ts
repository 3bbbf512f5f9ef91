import type { Equipment, EquipmentType } from '../../../facility/system';

/** Types whose power tells whether they work. */
export const WATCHED: readonly EquipmentType[] = [
  'heater',
  'chiller',
  'return-pump',
  'circulation-pump',
  'skimmer',
  'air-blower',
];

/**
 * Part of the rated power that still counts as idle: what a control unit draws beside a dead element or a motor that
 * stands.
 */
const IDLE_SHARE = 0.1;
/** A heater is a plain resistance: at half its power one of its elements is dead. */
const DEAD_ELEMENT_SHARE = 0.5;
/** A motor that is held fast draws twice its power and more. */
const HELD_FAST = 2;

/** What a watts range would take for healthy though it is not. */
export interface BlindSpot {
  what: 'idle' | 'dead element' | 'held fast';
  /** W that the fault draws, for idle at the most. */
  watts: number;
}

/**
 * Draws of a fault that fall inside a watts range, from common practice and no source: up to a tenth of the healthy
 * power nothing is running; at half of it a heater has lost an element; at twice of it a motor is held fast. The
 * healthy power is the rated one, else the middle of the range. Motors are not asked for more at the low end, because
 * one with variable speed rightly runs far below its rating.
 */
export function blindSpots({ type, ratedW, wattsRange }: Equipment): BlindSpot[] {
  if (wattsRange === undefined || !WATCHED.includes(type)) return [];
  const { minW, maxW } = wattsRange;
  const healthy = ratedW?.value ?? (minW + maxW) / 2;
  const spots: BlindSpot[] = [];
  const idle = IDLE_SHARE * healthy;
  const half = DEAD_ELEMENT_SHARE * healthy;
  if (minW <= idle) spots.push({ what: 'idle', watts: idle });
  else if (type === 'heater' && minW <= half) spots.push({ what: 'dead element', watts: half });
  if (maxW >= HELD_FAST * healthy) spots.push({ what: 'held fast', watts: HELD_FAST * healthy });
  return spots;
}
