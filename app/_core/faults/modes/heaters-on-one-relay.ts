import type { Uncarried } from '../fault';

/** Two heaters behind one contact. */
export const fault: Uncarried = {
  id: 'heaters-on-one-relay',
  row: 'HT7',
  title: 'Two heaters on one relay or thermostat',
  effect: 'They look like two and fail as one: both weld on together.',
  source: 'common practice, no source',
  carried: false,
  why: 'What one board takes with it is looked at among the things that fail together; the wiring is checked as well.',
  asks: { rule: 'heaters-on-one-relay' },
  concerns: (_, system) => system.equipment.filter((e) => e.type === 'heater').length > 1,
};
