import { has, type Uncarried } from '../fault';

/** A lamp in the water. */
export const fault: Uncarried = {
  id: 'light-falls-in',
  row: 'LT2',
  title: 'Light falls into the water',
  effect: 'Shock, fire, or everything behind its RCD dead.',
  source: 'common practice, no source',
  carried: false,
  why: 'What current does to people and animals is no matter of mixed water.',
  hazard: 'electric shock from a cracked heater or a lamp in the water',
  asks: { paper: 'electrical-inspection' },
  concerns: (_, system) => has(system, 'light'),
};
