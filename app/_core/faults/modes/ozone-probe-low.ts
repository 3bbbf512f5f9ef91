import type { Fault } from '../fault';
import { fault as like } from './ozone-on';

/** A fouled redox probe, or one driven by a stray current. */
export const fault: Fault = {
  ...like,
  id: 'ozone-probe-low',
  row: 'SE6',
  sameAs: like.id,
  title: 'Redox probe reads low',
  effect: 'The ozone generator is told to go on and on.',
  source: 'common practice, no source',
  remedies: ['ozone-two-probes', 'ozone-size', 'calibrate', 'oxidant-alarm'],
};
