import type { Fault } from '../fault';
import { fault as like } from './top-off-off';

/** Left unplugged after a water change. */
export const fault: Fault = {
  ...like,
  id: 'top-off-unplugged',
  row: 'AT5',
  sameAs: like.id,
  title: 'Top-off left unplugged, or the wrong plug put back',
  effect: 'Evaporation is not replaced; with the wrong plug something else stands still.',
  source: 'common practice, no source',
  remedies: ['hands-in-proof', 'level-alarm', 'salinity-round'],
};
