import { has, type Uncarried } from '../fault';

/** Paint, insecticide, cleaning spray. */
export const fault: Uncarried = {
  id: 'air-draws-fumes',
  row: 'AB4',
  title: 'Air pump draws in fumes',
  effect: 'Many tanks are poisoned at once.',
  source: 'common practice, no source',
  carried: false,
  why: 'Poisons are not modelled.',
  hazard: 'poisoning: fumes, metals, the wrong bottle',
  asks: { paper: 'air-intake' },
  concerns: (_, system) => has(system, 'air-blower', 'skimmer'),
};
