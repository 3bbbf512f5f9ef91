import { example, withoutAlarms, withSite } from './example/example';
import { alarmsOn } from './facts/alarms';
import { strictest } from './facts/limits';
import type { Rule } from './rule';

/** Neither an alarm nor a round looks at the salinity of salt water. It drifts over days, so a round is enough. */
export const rule: Rule = {
  id: 'salinity-unwatched',
  title: 'Nobody reads the salinity',
  why: 'A top-off stuck on or off changes nothing that can be seen until the animals show it.',
  source: 'Common practice, no source',
  grade: 'low',
  remedy: 'salinity-round',
  check: (context) => {
    const { facility, system } = context;
    const low = strictest(context, 'salinity', 'below');
    const high = strictest(context, 'salinity', 'above');
    // Only water that is kept salty can be diluted into harm.
    if (low === null || alarmsOn(context, 'salinity').length > 0) return [];
    const seen = facility.rounds.some(
      ({ sees, systems }) => sees.includes('salinity') && (systems === undefined || systems.includes(system.key)),
    );
    if (seen) return [];
    const limits = high === null ? `${low}` : `${low} and ${high}`;
    return [
      {
        cause: system.name,
        consequence: 'No alarm and no round reads it.',
        figures: [{ name: 'limits of harm', value: limits }],
      },
    ];
  },
  // The morning round reads it.
  passing: () => example(withoutAlarms('salinity-low')),
  failing: () =>
    example(
      withoutAlarms('salinity-low'),
      withSite(({ rounds }) => ({
        rounds: rounds.map((round) => ({ ...round, sees: round.sees.filter((aspect) => aspect !== 'salinity') })),
      })),
    ),
};
