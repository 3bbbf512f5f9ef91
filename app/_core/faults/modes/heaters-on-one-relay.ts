import type { Uncarried } from '../fault';

/** Two heaters behind one contact. */
export const fault: Uncarried = {
  id: 'heaters-on-one-relay',
  row: 'HT7',
  title: 'Two heaters on one relay or thermostat',
  effect: 'They look like two and fail as one: both weld on together.',
  source: 'HT7; common practice, no source',
  carried: false,
  why: 'A description does not say which contact switches what; what they share as far as it is described is checked.',
  asks: { rule: 'one-thermostat-for-all' },
  concerns: (_, system) => system.equipment.filter((e) => e.type === 'heater').length > 1,
};
