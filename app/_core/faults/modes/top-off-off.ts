import { equipmentThings, type Fault } from '../fault';

/** Top-off stuck off. */
export const fault: Fault = {
  id: 'top-off-off',
  row: 'AT2',
  title: 'Top-off stuck off',
  effect: 'Evaporation is not replaced: the sump falls until its pump draws air, and the water grows saltier.',
  source: 'common practice, no source',
  threatens: 'cold',
  shows: [],
  repair: 'equipment',
  states: 'running',
  remedies: ['level-alarm', 'salinity-round'],
  things: (_, system) => equipmentThings(system, 'top-off'),
  befall: (upset, thing) => upset.health.set(thing.key, 'dead'),
};
