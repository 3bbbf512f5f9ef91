import { has, type Uncarried } from '../fault';

/** Left on during a medicine. */
export const fault: Uncarried = {
  id: 'uv-in-treatment',
  row: 'UV3',
  title: 'UV, ozone or skimmer left on during a treatment',
  effect: 'The medicine is destroyed or taken out.',
  source: 'common practice, no source',
  carried: false,
  why: 'Medicines are not modelled; the plans are looked at instead.',
  asks: { rule: 'undecided-in-treatment' },
  concerns: (_, system) => has(system, 'uv', 'ozone', 'skimmer') && system.states.some((s) => s.name === 'treatment'),
};
