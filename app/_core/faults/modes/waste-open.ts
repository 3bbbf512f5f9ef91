import { equipmentThings, type Fault } from '../fault';

/** Drain or backwash valve left open. */
export const fault: Fault = {
  id: 'waste-open',
  row: 'WC3',
  title: 'Drain or backwash valve left open',
  effect: 'Water leaves as fast as the valve lets it; the sump falls, the return pump draws air, tanks may empty.',
  source: 'common practice, no source',
  threatens: 'either',
  shows: ['level', 'equipment'],
  repair: 'equipment',
  states: 'running',
  remedies: ['level-trip', 'level-alarm', 'spring-valve'],
  things: (_, system) => equipmentThings(system, 'filter', 'drain-valve'),
  befall: (upset, thing) => upset.openWaste.add(thing.key),
};
