import type { Fault } from '../fault';
import { fault as like } from './air-stops';

/** Switched off by hand. */
export const fault: Fault = {
  ...like,
  id: 'air-forgotten',
  row: 'AB5',
  sameAs: like.id,
  title: 'Air switched off by hand and forgotten',
  effect: 'As a blower that stops: oxygen falls to what surface, stirring and sump still carry.',
  source: 'common practice, no source',
  remedies: ['second-air', 'state-alarm', 'oxygen-alarm'],
};
