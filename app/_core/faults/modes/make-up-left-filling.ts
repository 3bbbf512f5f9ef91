import { has, type Uncarried } from '../fault';

/** A float that sticks while the reservoir fills. */
export const fault: Uncarried = {
  id: 'make-up-left-filling',
  row: 'RO2',
  title: 'Make-up left filling',
  effect: 'The floor is wet for days.',
  source: 'common practice, no source',
  carried: false,
  why: 'What fills the reservoirs is not described.',
  hazard: 'floods from what fills the reservoirs',
  asks: { rule: 'fill-at-night' },
  concerns: (_, system) => has(system, 'top-off'),
};
