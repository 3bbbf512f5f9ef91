import type { Fault } from '../fault';
import { fault as like } from './return-pumps-nothing';

/** The hose slips off the pump. */
export const fault: Fault = {
  ...like,
  id: 'return-hose-off',
  row: 'LK1',
  sameAs: like.id,
  title: 'Hose slips off the return pump',
  effect: 'The pump stirs the sump, and the tanks run back through the open hose as far as their outlets let them.',
  source: 'a 55 gallon tank put 76 L on the floor (aquariumadventures.blogspot.com, 2009-07)',
  remedies: ['hose-clamps', 'siphon-break', 'room-in-sump', 'leak-alarm'],
};
