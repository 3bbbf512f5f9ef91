import { has, type Uncarried } from '../fault';

/** A spent membrane or resin. */
export const fault: Uncarried = {
  id: 'make-up-spent',
  row: 'RO1',
  title: 'Make-up water no longer pure',
  effect: 'Chlorine, nitrate and copper come in with the top-off.',
  source: 'common practice, no source',
  carried: false,
  why: 'What the make-up carries besides salt is not described.',
  hazard: 'poisoning: what comes with the mains',
  asks: { paper: 'make-up-tests' },
  concerns: (_, system) => has(system, 'top-off'),
};
