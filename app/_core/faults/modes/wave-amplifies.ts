import { has, type Uncarried } from '../fault';

/** Resonance. */
export const fault: Uncarried = {
  id: 'wave-amplifies',
  row: 'CP3',
  title: 'Wave grows by resonance',
  effect: 'Water goes over the rim and the seams are stressed.',
  source: 'common practice, no source',
  carried: false,
  why: 'A level that swings is no mixed water.',
  hazard: 'waves and dead spots',
  asks: { rule: 'no-leak-alarm' },
  concerns: (_, system) => has(system, 'circulation-pump'),
};
