import { changed, example, withSystem } from './example/example';
import type { Rule } from './rule';

/** An alarm that does not say what whoever answers it is to do. */
export const rule: Rule = {
  id: 'alarm-without-response',
  title: 'An alarm says nothing of what to do',
  why: 'Somebody called at night acts on what is written; an alarm without a response is a message.',
  source:
    'An alarm needs a cause, a consequence, an action and the time for it; without them it is flagged (published alarm guidance after IEC 62682)',
  grade: 'low',
  remedy: 'write-response',
  check: ({ system }) =>
    system.alarms.flatMap(({ name, whatToDo, answeredBy }) => {
      if (answeredBy === 'nobody' || (whatToDo !== undefined && /\S/.test(whatToDo))) return [];
      const consequence = 'Whoever is called has to find out what it means and what to do.';
      return [{ cause: name, consequence, figures: [{ name: 'what to do', value: 'nothing written' }] }];
    }),
  passing: () => example(),
  failing: () =>
    example(withSystem(({ alarms }) => ({ alarms: changed(alarms, 'too-warm', { whatToDo: undefined }) }))),
};
