import { alarmDesigns } from '../alarm-design';
import { example } from './example/example';
import type { Rule, RuleContext } from './rule';

/** An alarm that no fault case raises, though the model could: for the record. */
export const rule: Rule = {
  id: 'alarm-never-raised',
  title: 'No fault case raises an alarm',
  why: 'Either it guards against what the model does not carry, which its card should say, or its limit is out of reach.',
  source: 'Every alarm has a cause and a consequence, or it is none (IEC 62682, rationalisation)',
  grade: 'low',
  remedy: 'ask-what-for',
  check: (context) => {
    // Before every case is judged nothing is known of it.
    if (!context.isWhole) return [];
    return alarmDesigns(context).flatMap(({ alarm: key, isCarried, raisedIn }) => {
      const alarm = context.system.alarms.find((one) => one.key === key);
      if (!alarm || !isCarried || raisedIn > 0) return [];
      const consequence = 'Nothing that is tried ever raises it, in any state.';
      return [
        { cause: alarm.name, consequence, figures: [{ name: 'fault cases tried', value: `${context.judged.size}` }] },
      ];
    });
  },
  passing: () => example(),
  failing: () => whole(example()),
};

/** As after a review in which no case was found. */
function whole(context: RuleContext): RuleContext {
  context.isWhole = true;
  return context;
}
