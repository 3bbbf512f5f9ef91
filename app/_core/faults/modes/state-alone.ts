import { OPERATING_STATES } from '../../facility/system';
import type { Fault } from '../fault';

/** Nothing fails: what an operating state does by itself, as its plan is written. */
export const fault: Fault = {
  id: 'state-alone',
  row: 'ST1',
  title: 'The state itself, with nothing wrong',
  effect:
    'A plan that leaves the skimmer on while the return pauses, or the return on while water is drawn, does harm without any fault.',
  source: 'operating states of the trade; common practice, no source',
  threatens: 'either',
  shows: [],
  repair: 'state',
  states: OPERATING_STATES.filter((state) => state !== 'normal'),
  remedies: ['mend-state'],
  things: (_, system) => [{ kind: 'system', key: system.key, name: system.name }],
  befall: (upset) => {
    upset.stateAlone = true;
  },
};
