import type { Fault } from '../fault';
import { fault as like } from './nobody-answers';

/** Nobody held the shift. */
export const fault: Fault = {
  ...like,
  id: 'thought-another-had-it',
  row: 'PE6',
  sameAs: like.id,
  title: 'Everybody believed another had it',
  effect: 'The call goes out, and each leaves it to the other.',
  source: 'common practice, no source',
  remedies: ['escalation', 'outside-watch'],
};
