import type { Fault } from '../fault';

/** Alarms shelved for work and not restored. */
export const fault: Fault = {
  id: 'alarms-put-off',
  row: 'NW4',
  title: 'Alarms put off and not brought back',
  effect: 'The water is as before, but none of these alarms would tell.',
  source: 'common practice, no source',
  threatens: 'either',
  shows: [],
  repair: 'monitor',
  states: ['normal'],
  remedies: ['shelf-ends', 'second-line'],
  things: (_, system) =>
    system.alarms.some((a) => a.answeredBy !== 'nobody') ? [{ kind: 'matter', key: 'alarms', name: 'Alarms' }] : [],
  befall: (upset, _, __, system) => {
    for (const alarm of system.alarms) upset.mutedAlarms.add(alarm.key);
  },
};
