import type { Equipment } from '../../facility/system';
import { CHILLER } from './example/equipment';
import { example, withMore } from './example/example';
import { byDevice, inSump, watchesFlowOrLevel } from './facts/equipment';
import { listed } from './facts/words';
import type { Rule, RuleContext } from './rule';

/** Whether another rule asks for a device in the place of this kind of line: it then says what is wrong. */
function isAskedFor(context: RuleContext, one: Equipment): boolean {
  return (one.type === 'heater' || one.type === 'skimmer') && inSump(context, one);
}

/**
 * The protective lines of a plan that a person carries out, less those that rules about heaters and skimmers report.
 */
function linesOf(context: RuleContext, one: Equipment): string[] {
  const { interlocks, lostSensing } = one.plan;
  const locks = interlocks.filter(
    (line) => !byDevice(line.by) && !(isAskedFor(context, one) && watchesFlowOrLevel(context, line)),
  );
  const isBlind = lostSensing !== undefined && !byDevice(lostSensing.by) && one.type !== 'heater';
  return [...locks.map(() => 'interlock'), ...(isBlind ? ['action on lost sensing'] : [])];
}

/** A line of a plan that is meant to protect and is left to a person. */
export const rule: Rule = {
  id: 'line-by-person',
  title: 'A line of a plan that is meant to protect is left to a person',
  why: 'A person protects only while looking; the review does not credit it.',
  source: 'Only what a device does counts as automatic (design rule of Holdfast)',
  grade: 'low',
  remedy: 'device-line',
  check: (context) =>
    context.system.equipment.flatMap((one) => {
      const lines = linesOf(context, one);
      if (lines.length === 0) return [];
      const kinds = [...new Set(lines)];
      const consequence = `Its plan has a person carry out the ${listed(kinds)}; it counts as absent.`;
      return [
        { cause: one.name, consequence, figures: [{ name: 'lines left to a person', value: `${lines.length}` }] },
      ];
    }),
  passing: () => example(withMore(CHILLER)),
  failing: () =>
    example(
      withMore({
        ...CHILLER,
        plan: { ...CHILLER.plan, interlocks: CHILLER.plan.interlocks.map((line) => ({ ...line, by: 'person' })) },
      }),
    ),
};
