import type { Fault } from '../fault';
import { fault as like } from './return-stops';

/** More drains down than fits. */
export const fault: Fault = {
  ...like,
  id: 'sump-overfilled',
  row: 'SU1',
  sameAs: like.id,
  title: 'Sump overflows when the return stops',
  effect: 'What drains down from the tanks exceeds the free space of the sump: a flood at every power cut.',
  source:
    'one 125 gallon tank gives back just under 38 L by a surface outlet and about 380 L by one at the bottom (fins.actwin.com, month.9907, msg00246)',
  remedies: ['room-in-sump', 'siphon-break', 'leak-alarm'],
};
