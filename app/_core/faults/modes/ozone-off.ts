import { has, type Uncarried } from '../fault';

/** No ozone. */
export const fault: Uncarried = {
  id: 'ozone-off',
  row: 'OZ2',
  title: 'Ozone stops',
  effect: 'The water gets less clear over weeks.',
  source: 'common practice, no source',
  carried: false,
  why: 'Being off is its safe state.',
  concerns: (_, system) => has(system, 'ozone'),
};
