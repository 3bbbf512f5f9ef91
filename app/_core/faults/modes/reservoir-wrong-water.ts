import { type Fault, feeds, tankThings } from '../fault';

/** Filled from the wrong line. */
export const fault: Fault = {
  id: 'reservoir-wrong-water',
  row: 'AT4',
  title: 'Top-off reservoir filled with salt water',
  effect: 'What evaporates is replaced by salt water: salinity climbs day by day.',
  source: 'common practice, no source',
  threatens: 'cold',
  shows: [],
  repair: 'water',
  states: ['normal'],
  remedies: ['fill-check', 'salinity-round', 'salinity-alarm'],
  things: (_, system) =>
    (system.salinity.value ?? 0) > 0
      ? tankThings(system, (t) => t.role === 'reservoir' && feeds(system, t.key, 'top-off'))
      : [],
  befall: (upset, thing, _, system) => upset.reservoirSalinity.set(thing.key, system.salinity.value ?? 0),
};
