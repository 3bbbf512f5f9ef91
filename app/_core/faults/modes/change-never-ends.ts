import { type Fault, stateThings } from '../fault';

/** Water change never ended: not by whoever, not by whatever should. */
export const fault: Fault = {
  id: 'change-never-ends',
  row: 'WC1',
  title: 'Water change never ended',
  effect: 'What was drawn stays out and what was stopped stays off: levels, salt and heat walk away.',
  source: 'common practice, no source',
  threatens: 'either',
  shows: ['equipment', 'level'],
  repair: 'state',
  states: ['water-change'],
  remedies: ['state-timer', 'state-alarm', 'air-in-pause'],
  things: (_, system) => stateThings(system, 'water-change'),
  befall: (upset) => {
    upset.stateNeverEnds = true;
  },
};
