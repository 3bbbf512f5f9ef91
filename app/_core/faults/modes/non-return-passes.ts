import type { Fault } from '../fault';
import { fault as like } from './return-stops';

/** Grit, shell or salt in a valve. */
export const fault: Fault = {
  ...like,
  id: 'non-return-passes',
  row: 'NV1',
  sameAs: like.id,
  title: 'Non-return valve lets water back',
  effect: 'A valve is never the only defence: what drains down when the return stops is reckoned without one.',
  source: 'common practice, no source',
  remedies: ['siphon-break', 'room-in-sump', 'leak-alarm'],
};
