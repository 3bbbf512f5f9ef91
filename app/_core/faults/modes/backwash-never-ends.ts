import { type Fault, stateThings } from '../fault';

/** Backwash never ended: not by whoever, not by whatever should. */
export const fault: Fault = {
  id: 'backwash-never-ends',
  row: 'PE2',
  title: 'Backwash never ended',
  effect: 'What was drawn stays out, the filter gives no clean water, and heaters may stand bare.',
  source: 'common practice, no source',
  threatens: 'either',
  shows: ['equipment', 'level'],
  repair: 'state',
  states: ['backwash'],
  remedies: ['state-timer', 'state-alarm', 'air-in-pause'],
  things: (_, system) => stateThings(system, 'backwash'),
  befall: (upset) => {
    upset.stateNeverEnds = true;
  },
};
