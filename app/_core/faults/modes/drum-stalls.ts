import type { Fault } from '../fault';
import { fault as like } from './filter-blinds';

/** A drum filter whose spray fails. */
export const fault: Fault = {
  ...like,
  id: 'drum-stalls',
  row: 'FL5',
  sameAs: like.id,
  title: 'Drum filter stalls',
  effect: 'Water takes the bypass: solids stay, ammonia climbs.',
  source: 'common practice, no source',
  remedies: ['second-filter', 'level-alarm', 'ammonia-round'],
};
