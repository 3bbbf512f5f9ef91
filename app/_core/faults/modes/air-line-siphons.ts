import { equipmentThings, type Fault } from '../fault';

/** m³/s through a line of 6 mm (60 L/h), and m below the surface at which a stone hangs. Common practice, no source. */
const SIPHON_M3_PER_S = 60 / 3.6e6;
const STONE_M = 0.3;

/** Water runs back up an air line. */
export const fault: Fault = {
  id: 'air-line-siphons',
  row: 'AB3',
  title: 'Water siphons back through the air line',
  effect: 'A blower that hangs below the water drowns when it stops, and the tank runs out through it.',
  source: 'AB3; common practice, no source',
  threatens: 'either',
  shows: ['floor', 'equipment'],
  repair: 'plumbing',
  states: ['normal'],
  remedies: ['check-valve', 'leak-alarm', 'second-air'],
  things: (_, system) => equipmentThings(system, 'air-blower'),
  befall: (upset, thing, _, system) => {
    upset.health.set(thing.key, 'dead');
    const blower = system.equipment.find((e) => e.key === thing.key);
    const tank = blower?.stones?.[0]?.tank ?? blower?.tank;
    if (tank !== undefined) upset.leaks.set(tank, { flow: SIPHON_M3_PER_S, depth: STONE_M });
  },
};
