import { type Uncarried, usesMains } from '../fault';

/** The water works change disinfectant or shock-dose. */
export const fault: Uncarried = {
  id: 'mains-change',
  row: 'CA2',
  title: 'Mains water changes',
  effect: 'What was enough to take the chlorine out is not any more.',
  source: '19 rays over two weeks (chicagotribune.com, 2008-07-18)',
  carried: false,
  why: 'What comes out of the tap tomorrow is not known.',
  hazard: 'poisoning: what comes with the mains',
  asks: { paper: 'mains-notices' },
  concerns: usesMains,
};
