import type { Uncarried } from '../fault';

/** Too many alarms at once. */
export const fault: Uncarried = {
  id: 'alarm-flood',
  row: 'NW3',
  title: 'Alarms in a flood',
  effect: 'The real one is missed.',
  source: 'common practice, no source',
  carried: false,
  why: 'How people stand many alarms is not modelled; Holdfast counts them and tells the cause first.',
  concerns: (_, system) => system.alarms.length > 0,
};
