import { isOff, isTested, lastTest, safeguardsOf } from '../../plans/credit';
import type { Safeguard } from '../../plans/safeguard';
import { changed, example, withSystem } from './example/example';
import type { Rule, RuleContext } from './rule';

/** Whether a site's safeguard matters to a system: a battery only to what hangs on its circuits, the others to all. */
function concerns({ facility, system }: RuleContext, { key }: Safeguard): boolean {
  const batteries = facility.circuits.filter(({ upsSafeguard }) => upsSafeguard === key);
  const isOther = facility.site.generator?.safeguard === key || facility.site.watchdog?.safeguard === key;
  if (batteries.length === 0 || isOther) return true;
  const used = [...system.equipment, ...facility.monitors].map(({ circuit }) => circuit);
  return batteries.some((circuit) => used.includes(circuit.key));
}

/**
 * Safeguards a system counts on that have not shown within their interval that they work, or failed when they were
 * last tried. One that is off is not counted on.
 */
export function untestedSafeguards(context: RuleContext): Safeguard[] {
  const { facility, system, on } = context;
  const own = new Set(system.safeguards);
  return safeguardsOf(facility, system).filter(
    (one) => !isTested(one, on) && !isOff(one, on) && (own.has(one) || concerns(context, one)),
  );
}

/** A safeguard that is counted on and not tested: absent in the column "as tested". */
export const rule: Rule = {
  id: 'safeguard-untested',
  title: 'Safeguards are counted on but not tested',
  why: 'What loses animals is one fault and one safeguard that everybody believed in.',
  source: 'A safeguard not tested within its interval counts as absent (design rule of Holdfast)',
  grade: 'low',
  remedy: 'test-safeguards',
  toldApart: true,
  check: (context) =>
    untestedSafeguards(context).map((one) => {
      const last = lastTest(one, context.on);
      const consequence =
        last === null
          ? 'It has never been tested.'
          : last.result === 'failed'
            ? 'It failed when it was last tested.'
            : 'Its last test is older than its interval.';
      const figures = [
        { name: 'last test', value: last?.on ?? 'none' },
        { name: 'interval', value: `${one.testEveryDays} days` },
      ];
      return { cause: one.name, consequence, figures };
    }),
  passing: () => example(),
  failing: () =>
    example(withSystem(({ safeguards }) => ({ safeguards: changed(safeguards, 'run-limit', { tests: [] }) }))),
};
