import type { Fault } from '../fault';
import { fault as like } from './utility-fails-no-generator';

/** The transfer switch does not change over. */
export const fault: Fault = {
  ...like,
  id: 'transfer-fails',
  row: 'PW7',
  sameAs: like.id,
  title: 'Transfer switch does not change over',
  effect: 'The generator runs and its load is dead.',
  source: 'common practice, no source',
  remedies: ['generator-test', 'backed-air', 'power-cut-means'],
};
