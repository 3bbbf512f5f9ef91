import { judge } from '../../judge';
import { subjectsOf } from '../../subjects';
import type { RuleContext } from '../rule';

/** A context in which the cases of one failure mode have been judged, for rules that look at what came of them. */
export function judgedFor(context: RuleContext, fault: string, thing: string): RuleContext {
  for (const subject of subjectsOf(context.facility, context.system))
    if (subject.fault.id === fault && subject.thing.key === thing && subject.state === 'normal')
      judge(context, subject);
  return context;
}
