import type { Uncarried } from '../fault';

/** Wrong line, wrong bottle, wrong tank. */
export const fault: Uncarried = {
  id: 'wrong-tank',
  row: 'PE4',
  title: 'Wrong bottle into the wrong tank',
  effect: 'Poisoning, or fresh water where salt should be.',
  source: 'half a tank refilled from the salt line (blogs.thatpetplace.com, 2010-05-26)',
  carried: false,
  why: 'Poisons are not modelled; the wrong line at a water change is a case of its own.',
  hazard: 'poisoning: fumes, metals, the wrong bottle',
  asks: { paper: 'chemicals' },
  concerns: (_, system) => system.stock.length > 0,
};
