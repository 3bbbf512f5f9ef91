import type { Uncarried } from '../fault';

/** One box controls and alarms. */
export const fault: Uncarried = {
  id: 'one-box',
  row: 'NW6',
  title: 'One box both controls and alarms',
  effect: 'The same fault does the harm and hides it.',
  source: 'common practice, no source',
  carried: false,
  why: 'Which box does what is described only as gateway and probe; what they share is checked.',
  asks: { rule: 'alarm-on-control-probe' },
  concerns: (_, system) => system.alarms.length > 0,
};
