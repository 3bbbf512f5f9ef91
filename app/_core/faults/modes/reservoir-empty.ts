import { type Fault, feeds, tankThings } from '../fault';

/** Nobody filled it. */
export const fault: Fault = {
  id: 'reservoir-empty',
  row: 'AT4',
  title: 'Top-off reservoir empty',
  effect: 'Evaporation is not replaced: the sump falls until its pump draws air, and the water grows saltier.',
  source: 'common practice, no source',
  threatens: 'cold',
  shows: ['level'],
  repair: 'plumbing',
  states: ['normal'],
  remedies: ['reservoir-alarm', 'level-alarm', 'salinity-round'],
  things: (_, system) => tankThings(system, (t) => t.role === 'reservoir' && feeds(system, t.key, 'top-off')),
  befall: (upset, thing) => upset.emptyReservoirs.add(thing.key),
};
