import { has, type Uncarried } from '../fault';

/** The reactor’s pump stops and the gas goes on. */
export const fault: Uncarried = {
  id: 'reactor-without-flow',
  row: 'CR4',
  title: 'Carbon dioxide on while the reactor stands',
  effect: 'A slug of acid when it starts again.',
  source: 'common practice, no source',
  carried: false,
  why: 'A reactor is no water of its own in a description.',
  asks: { rule: 'dosing-without-flow' },
  concerns: (_, system) => has(system, 'co2'),
};
