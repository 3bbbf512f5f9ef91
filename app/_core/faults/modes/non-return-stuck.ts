import type { Fault } from '../fault';
import { fault as like } from './return-pumps-nothing';

/** A valve that no longer opens. */
export const fault: Fault = {
  ...like,
  id: 'non-return-stuck',
  row: 'NV2',
  sameAs: like.id,
  title: 'Non-return valve stuck shut',
  effect: 'The pump runs against it and moves nothing.',
  source: 'common practice, no source',
  remedies: ['flow-alarm', 'watts-range', 'second-return', 'air-in-tank'],
};
