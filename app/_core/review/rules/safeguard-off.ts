import { isOff, safeguardsOf } from '../../plans/credit';
import { changed, example, withSystem } from './example/example';
import type { Rule } from './rule';

/** A safeguard that has been taken out of service. */
export const rule: Rule = {
  id: 'safeguard-off',
  title: 'A safeguard is off',
  why: 'Safeguards put off for a piece of work are forgotten; until then the review counts on none of them.',
  source: 'Alarm shelved or safeguard defeated for work and not restored; common practice, no source',
  grade: 'low',
  remedy: 'safeguard-back',
  check: ({ facility, system, on }) =>
    safeguardsOf(facility, system).flatMap((one) => {
      if (one.off === undefined || !isOff(one, on)) return [];
      const { by, why, since, until } = one.off;
      const figures = [
        { name: 'since', value: since },
        { name: 'until', value: until },
        { name: 'by', value: by },
      ];
      return [
        {
          cause: one.name,
          consequence: `It does nothing meanwhile. Reason given: ${why.replace(/[\s.]+$/, '')}.`,
          figures,
        },
      ];
    }),
  passing: () => example(),
  failing: () =>
    example(
      withSystem(({ safeguards }) => ({
        safeguards: changed(safeguards, 'run-limit', {
          off: { by: 'First keeper', why: 'pump being replaced', since: '2026-05-28', until: '2026-06-05' },
        }),
      })),
    ),
};
