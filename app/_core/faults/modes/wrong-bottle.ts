import { has, type Uncarried } from '../fault';

/** The wrong liquid in the container. */
export const fault: Uncarried = {
  id: 'wrong-bottle',
  row: 'DP4',
  title: 'Wrong liquid in the container',
  effect: 'Poisoning, within minutes to hours.',
  source: 'a mislabelled container, 389 fish of two systems dead within one night (usatoday.com, 2015-04-22)',
  carried: false,
  why: 'Poisons are not modelled.',
  hazard: 'poisoning: fumes, metals, the wrong bottle',
  asks: { paper: 'chemicals' },
  concerns: (_, system) => has(system, 'doser') || system.states.some((s) => s.name === 'treatment'),
};
