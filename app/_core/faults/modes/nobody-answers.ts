import type { Fault } from '../fault';

/** The call goes out and nobody gets it. */
export const fault: Fault = {
  id: 'nobody-answers',
  row: 'NW2',
  title: 'Called, and nobody answers',
  effect: 'A silent phone, somebody who left, the wrong rota: the answer never begins.',
  source: 'common practice, no source',
  threatens: 'either',
  shows: [],
  repair: 'monitor',
  states: ['normal'],
  remedies: ['escalation', 'outside-watch'],
  things: (_, system) =>
    system.alarms.some((a) => a.answeredBy !== 'nobody') ? [{ kind: 'matter', key: 'calls', name: 'Calls' }] : [],
  befall: (upset) => {
    upset.nobodyAnswers = true;
  },
};
