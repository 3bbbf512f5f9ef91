import type { Fault } from '../fault';
import { fault as like } from './chiller-off';

/** The evaporator freezes. */
export const fault: Fault = {
  ...like,
  id: 'chiller-no-flow',
  row: 'CH3',
  sameAs: like.id,
  title: 'Chiller loses its flow and freezes',
  effect: 'The evaporator freezes and splits: no cooling any more, and refrigerant and copper may reach the water.',
  source: 'common practice, no source',
  remedies: ['flow-interlock', 'second-chiller', 'high-alarm'],
};
