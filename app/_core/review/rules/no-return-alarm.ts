import { example, withoutAlarms } from './example/example';
import { alarmsOn } from './facts/alarms';
import { ofType } from './facts/equipment';
import type { Rule, RuleContext } from './rule';

/** Keys of equipment whose power is watched by an alarm that knows its healthy range. */
function wattsAlarmed({ system }: RuleContext): Set<string> {
  const ranged = system.equipment.filter(({ wattsRange }) => wattsRange !== undefined).map(({ key }) => key);
  const watched = system.alarms.flatMap(({ on }) => (on.kind === 'watts' ? [on.equipment] : []));
  return new Set(watched.filter((key) => ranged.includes(key)));
}

/** The return can stop without anybody being called. Demanded wherever there is a return: all else hangs on it. */
export const rule: Rule = {
  id: 'no-return-alarm',
  title: 'No alarm calls when the return is lost',
  why: 'Heat, filter, air of the sump and often the top-off depend on the return; the water itself shows its loss late.',
  source: 'Proof of flow, or power below the healthy range; common practice, no source',
  grade: 'medium',
  remedy: 'flow-alarm',
  check: (context) => {
    const pumps = ofType(context, 'return-pump');
    const flow = alarmsOn(context, 'flow').some(({ below }) => below !== undefined);
    const metered = alarmsOn(context, 'watts').filter(({ below }) => below !== undefined);
    const proved = new Set([...wattsAlarmed(context), ...metered.map(({ sensor }) => sensor.equipment)]);
    const unwatched = pumps.filter(({ key }) => !proved.has(key));
    if (flow || unwatched.length === 0) return [];
    return unwatched.map(({ name }) => ({
      cause: name,
      consequence: 'It can stop, or run without pumping, and nobody is called.',
      figures: [{ name: 'alarm on flow or watts', value: 'none' }],
    }));
  },
  passing: () => example(withoutAlarms('return-lost')),
  failing: () => example(withoutAlarms('return-lost', 'return-watts')),
};
