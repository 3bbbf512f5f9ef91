import { has, type Uncarried } from '../fault';

/** Bands that overlap. */
export const fault: Uncarried = {
  id: 'heater-against-chiller',
  row: 'CH4',
  title: 'Heater and chiller fight',
  effect: 'Energy is wasted, both start often and wear early.',
  source: 'common practice, no source',
  carried: false,
  why: 'It harms no animal by itself; the plans are compared instead.',
  asks: { rule: 'heater-fights-chiller' },
  concerns: (_, system) => has(system, 'heater') && has(system, 'chiller'),
};
