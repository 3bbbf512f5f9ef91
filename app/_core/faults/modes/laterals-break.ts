import { has, type Uncarried } from '../fault';

/** Broken laterals. */
export const fault: Uncarried = {
  id: 'laterals-break',
  row: 'FL3',
  title: 'Sand of the filter reaches the tank',
  effect: 'Sand in tanks and pumps.',
  source: 'common practice, no source',
  carried: false,
  why: 'Solids are not modelled.',
  hazard: 'what filters let go: sand, a slug of bad water',
  asks: { paper: 'filter-inspection' },
  concerns: (_, system) => has(system, 'filter'),
};
