import type { Fault } from '../fault';
import { fault as like } from './ozone-on';

/** Spent carbon, a bypassed chamber. */
export const fault: Fault = {
  ...like,
  id: 'ozone-bypasses',
  row: 'OZ3',
  sameAs: like.id,
  title: 'Ozone passes its carbon',
  effect: 'What the contact chamber should hold goes into the display, and into the room.',
  source: 'common practice, no source',
  remedies: ['carbon-log', 'oxidant-alarm', 'ozone-size'],
};
