import type { System, Tank, TankRole } from '../../facility/system';
import { type Fault, tankThings } from '../fault';

/**
 * m³/s through a cracked union or an open seam at the running level (200 L/h), and 1/s of a small tank's own water, whose fittings
 * are small (half of it in an hour). Common practice, no source.
 */
const LEAK_M3_PER_S = 200 / 3.6e6;
const LEAK_PER_S = 0.5 / 3600;
/** Roles of the tanks that are watched for it. */
const WET: readonly TankRole[] = ['display', 'holding', 'quarantine', 'nursery', 'sump'];

/** A seam, bulkhead, hose or union lets go. */
export const fault: Fault = {
  id: 'tank-leaks',
  row: 'LK1',
  title: 'Tank or fitting leaks',
  effect: 'The level falls and the floor is wet; with a sump, the pump runs dry in the end.',
  source: 'common practice, no source',
  threatens: 'either',
  shows: ['floor', 'level'],
  repair: 'plumbing',
  states: ['normal'],
  remedies: ['leak-alarm', 'level-alarm', 'hose-clamps', 'level-trip'],
  things: (_, system) => {
    const wet = system.tanks.filter((t) => WET.includes(t.role));
    const first = new Map(wet.toReversed().map((t) => [alike(system, t), t.key]));
    return tankThings(system, (t) => first.get(alike(system, t)) === t.key);
  },
  befall: (upset, thing, _, system) => {
    const tank = system.tanks.find((t) => t.key === thing.key);
    const volume = (tank?.volumeL.value ?? 0) / 1000;
    const depth = volume / (tank?.surfaceM2.value ?? 1);
    upset.leaks.set(thing.key, { flow: Math.min(LEAK_M3_PER_S, LEAK_PER_S * volume), depth });
  },
};

/** Tanks that are alike leak alike: the first of them stands for all. */
function alike(system: System, { key, role, volumeL, surfaceM2, returnShare, rimMm }: Tank): string {
  const isStocked = system.stock.some((s) => s.tank === key);
  return [role, volumeL.value, surfaceM2.value, returnShare?.value, rimMm?.value, isStocked].join(' ');
}
