import { type Fault, thingsWhere } from '../fault';
import { fault as like } from './heater-off';

/** W from which a heater is taken for one that a boiler or a heating loop feeds. Common practice, no source. */
const LOOP_W = 5000;

/** Boiler lockout, or the loop’s pump fails. */
export const fault: Fault = {
  ...like,
  id: 'heat-loop-stops',
  row: 'HX3',
  sameAs: like.id,
  title: 'Heating loop stops',
  effect: 'Every system on the loop cools together.',
  source: 'common practice, no source',
  remedies: ['second-heater', 'low-alarm'],
  things: (_, system) => thingsWhere(system, (e) => e.type === 'heater' && (e.ratedW?.value ?? 0) >= LOOP_W),
};
