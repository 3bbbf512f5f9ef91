import type { Fault } from '../fault';
import { fault as like } from './filter-stops';

/** Medicine, chlorine or cleaning. */
export const fault: Fault = {
  ...like,
  id: 'biofilter-poisoned',
  row: 'BF1',
  sameAs: like.id,
  title: 'Biofilter poisoned',
  effect: 'Ammonia and nitrite climb for weeks.',
  source: 'common practice, no source',
  remedies: ['ammonia-round', 'feed-stop', 'second-filter'],
};
