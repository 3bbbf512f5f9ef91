import type { Uncarried } from '../fault';

/** Two probes in one bad spot. */
export const fault: Uncarried = {
  id: 'probes-in-one-place',
  row: 'SE13',
  title: 'Two probes agree because they share a place',
  effect: 'The vote is fooled: both read the same still corner or hang on the same plug.',
  source: 'common practice, no source',
  carried: false,
  why: 'Where in a tank a probe hangs is not described; that two share a tank is checked.',
  asks: { rule: 'probes-in-one-place' },
  concerns: (_, system) =>
    system.equipment.some((e) => e.plan.regulation.kind === 'thermostat' && e.plan.regulation.sensors.length > 1),
};
