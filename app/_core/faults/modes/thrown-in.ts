import type { Uncarried } from '../fault';

/** What visitors throw in. */
export const fault: Uncarried = {
  id: 'thrown-in',
  row: 'PE8',
  title: 'Visitors put things into the water',
  effect: 'Coins, food and drink poison or choke.',
  source: 'common practice, no source',
  carried: false,
  why: 'Poisons are not modelled.',
  hazard: 'poisoning: fumes, metals, the wrong bottle',
  asks: { paper: 'public-side' },
  concerns: (_, system) =>
    system.tanks.some((t) => t.role === 'display' && t.cover === 'open') && system.kind === 'ray',
};
