import type { Fault } from '../fault';
import { fault as like } from './return-stops';

/** Power is back and the pump is not. */
export const fault: Fault = {
  ...like,
  id: 'return-no-restart',
  row: 'RP5',
  sameAs: like.id,
  title: 'Return pump does not start again after a power cut',
  effect: 'A stuck rotor or lost prime: everybody believes the power is back.',
  source: 'keepers report finding it again and again; common practice, no source',
  remedies: ['prove-restart', 'flow-alarm', 'watts-alarm', 'second-return', 'air-in-tank'],
};
