import type { Fault } from '../fault';
import { fault as like } from './return-stops';

/** Too little water over the pump. */
export const fault: Fault = {
  ...like,
  id: 'return-runs-dry',
  row: 'RP3',
  sameAs: like.id,
  title: 'Return pump runs dry and burns out',
  effect: 'Its seal melts; from then on it is a pump that has stopped.',
  source: 'common practice, no source',
  remedies: ['level-trip', 'level-alarm', 'second-return', 'air-in-tank'],
};
