import { type Fault, thingsWhere } from '../fault';
import { fault as like } from './top-off-on';

/** Snail, salt or grease holds it down. */
export const fault: Fault = {
  ...like,
  id: 'level-switch-low',
  row: 'SE9',
  sameAs: like.id,
  title: 'Level switch stuck low',
  effect: 'It asks for water for ever: the top-off goes on.',
  source: 'common practice, no source',
  remedies: ['high-level-lock', 'run-limit', 'lift-test', 'leak-alarm'],
  things: (_, system) => thingsWhere(system, (e) => e.type === 'top-off' && e.plan.regulation.kind === 'level'),
};
