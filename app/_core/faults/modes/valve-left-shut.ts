import type { Fault } from '../fault';
import { fault as like } from './return-pumps-nothing';

/** A valve forgotten after work. */
export const fault: Fault = {
  ...like,
  id: 'valve-left-shut',
  row: 'PE1',
  sameAs: like.id,
  title: 'Valve left shut after work',
  effect: 'The pump runs against it and moves nothing.',
  source: 'common practice, no source',
  remedies: ['hands-in-proof', 'flow-alarm', 'watts-range', 'second-return'],
  repair: 'equipment',
};
