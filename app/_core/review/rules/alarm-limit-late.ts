import { changed, example, withSystem } from './example/example';
import { lateLimits } from './facts/alarm-limits';
import { judgedFor } from './facts/judged';
import type { Rule } from './rule';

/** A limit that is passed too late for what has to follow, with room to set it earlier. */
export const rule: Rule = {
  id: 'alarm-limit-late',
  title: "An alarm's limit is beyond the last chance",
  why: 'Answer, way and work must fit between the alarm and the last chance, at the worst hour of the week too.',
  source: 'Limits are set backwards from the time that the response takes (worked example of published alarm guidance)',
  grade: 'low',
  remedy: 'earlier-warning',
  check: (context) =>
    lateLimits(context, true, 'When it calls, nobody can have it put right in time at the worst hour of the week.'),
  passing: () => judgedFor(example(), 'tank-leaks', 'sump'),
  failing: () => judgedFor(example(tooCold(23)), 'tank-leaks', 'sump'),
};

function tooCold(below: number) {
  return withSystem(({ alarms }) => ({
    alarms: changed(alarms, 'too-cold', { on: { kind: 'sensor', sensor: 'display-temperature', below } }),
  }));
}
