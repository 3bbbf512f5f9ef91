import type { Fault } from '../fault';
import { fault as like } from './overflow-blocked';

/** An overflow that works by siphon. */
export const fault: Fault = {
  ...like,
  id: 'siphon-overflow-stops',
  row: 'OV2',
  sameAs: like.id,
  title: 'Siphon overflow loses its prime',
  effect: 'As an overflow that is blocked: the tank spills, the sump runs low.',
  source: 'common practice, no source',
  remedies: ['second-overflow', 'small-sump', 'leak-alarm', 'level-trip'],
};
