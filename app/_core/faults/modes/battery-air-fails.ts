import type { Fault } from '../fault';
import { fault as like } from './utility-fails-no-battery';

/** A battery pump run down, or switched off instead of to automatic. */
export const fault: Fault = {
  ...like,
  id: 'battery-air-fails',
  row: 'PW9',
  sameAs: like.id,
  title: 'Battery air runs down or was left off',
  effect: 'False comfort: it hangs there and gives no air when it is needed.',
  source: 'common practice, no source',
  remedies: ['battery-test', 'backed-air', 'power-cut-means'],
};
