import type { AnsweredBy } from '../../facility/site';
import { changed, example, withSystem } from './example/example';
import { listed } from './facts/words';
import type { Rule, RuleContext } from './rule';

/** Why nobody answers; null when somebody does. Hours without anybody are the site's own finding. */
function whyNobody({ facility }: RuleContext, answeredBy: AnsweredBy): string | null {
  if (answeredBy === 'rota') return null;
  if (answeredBy === 'nobody') return 'Nobody is named to answer it.';
  const onRota = new Set(facility.shifts.flatMap(({ people }) => people));
  if (answeredBy.some((key) => onRota.has(key))) return null;
  const names = answeredBy.map((key) => facility.people.find((person) => person.key === key)?.name ?? key);
  if (names.length === 0) return 'Nobody is named to answer it.';
  return `It calls ${listed(names)}, who ${names.length === 1 ? 'is' : 'are'} on no shift of the rota.`;
}

/** An alarm that calls nobody, or only people who are on no shift. */
export const rule: Rule = {
  id: 'alarm-unanswered',
  title: 'An alarm is answered by nobody',
  why: 'An alarm without somebody to answer it changes nothing.',
  source: 'Alarm sent and nobody gets it: staff who left, a wrong rota; common practice, no source',
  grade: 'medium',
  remedy: 'answer-alarm',
  check: (context) => {
    const { watchdog } = context.facility.site;
    const outside = watchdog ? [{ name: 'Watch outside the site', answeredBy: watchdog.answeredBy }] : [];
    return [...context.system.alarms, ...outside].flatMap(({ name, answeredBy }) => {
      const consequence = whyNobody(context, answeredBy);
      if (consequence === null) return [];
      const value = typeof answeredBy === 'string' ? answeredBy : answeredBy.join(', ') || 'nobody';
      return [{ cause: name, consequence, figures: [{ name: 'answered by', value }] }];
    });
  },
  passing: () =>
    example(withSystem(({ alarms }) => ({ alarms: changed(alarms, 'too-warm', { answeredBy: ['second'] }) }))),
  failing: () =>
    example(withSystem(({ alarms }) => ({ alarms: changed(alarms, 'too-warm', { answeredBy: 'nobody' }) }))),
};
