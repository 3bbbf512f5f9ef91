import { placesOf, withPlan } from '../edit';
import type { Remedy } from '../remedy';

/** min of the longest run that is proposed. Common practice, no source. */
const RUN_MIN = 10;

/** A limit on the top-off's longest run. */
export const remedy: Remedy = {
  id: 'run-limit',
  changes: 'water',
  places: (_, system) =>
    placesOf(
      system,
      'top-off',
      'A run limit on',
      ({ plan: { regulation: r } }) => r.kind === 'level' && r.runLimitMin === undefined,
    ),
  apply: (facility, system, { key }) =>
    withPlan(facility, system, key, ({ regulation }) => ({
      regulation: regulation.kind === 'level' ? { ...regulation, runLimitMin: RUN_MIN } : regulation,
    })),
};
