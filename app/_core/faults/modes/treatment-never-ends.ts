import { type Fault, stateThings } from '../fault';

/** Treatment never ended: not by whoever, not by whatever should. */
export const fault: Fault = {
  id: 'treatment-never-ends',
  row: 'PE2',
  title: 'Treatment never ended',
  effect: 'Skimmer, ozone or UV stay off for longer than the oxygen of the nights can stand.',
  source: 'common practice, no source',
  threatens: 'either',
  shows: ['equipment', 'level'],
  repair: 'state',
  states: ['treatment'],
  remedies: ['state-timer', 'state-alarm', 'air-in-pause'],
  things: (_, system) => stateThings(system, 'treatment'),
  befall: (upset) => {
    upset.stateNeverEnds = true;
  },
};
