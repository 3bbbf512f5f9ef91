import { has, type Uncarried } from '../fault';

/** The lamps stay dark. */
export const fault: Uncarried = {
  id: 'light-off',
  row: 'LT1',
  title: 'Lights stay off',
  effect: 'Corals and plants starve within a week; the day’s heat and oxygen are missing.',
  source: 'common practice, no source',
  carried: false,
  why: 'What light is worth to corals is not modelled; every round sees it long before.',
  concerns: (_, system) => has(system, 'light'),
};
