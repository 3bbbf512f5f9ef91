import type { Fault } from '../fault';
import { fault as like } from './return-stops';

/** Unplugged for work with hands in the water. */
export const fault: Fault = {
  ...like,
  id: 'pump-left-unplugged',
  row: 'PE3',
  sameAs: like.id,
  title: 'Pump left unplugged after work',
  effect: 'As a pump that stops, until somebody looks.',
  source: 'many keepers report it; common practice, no source',
  remedies: ['hands-in-proof', 'watts-alarm', 'flow-alarm', 'air-in-tank'],
};
