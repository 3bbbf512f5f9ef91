import { changed, example, withSystem } from './example/example';
import { lateLimits } from './facts/alarm-limits';
import { judgedFor } from './facts/judged';
import type { Rule } from './rule';

/** No limit is early enough that the healthy system would not pass as well. */
export const rule: Rule = {
  id: 'alarm-limit-without-room',
  title: 'No limit is early enough outside of what the healthy system does',
  why: 'Where nothing lies between what is normal and what is too late, people cannot be the only protection.',
  source: 'A limit that would fall inside the normal range is a design problem to report (published alarm guidance)',
  grade: 'low',
  remedy: 'second-line',
  check: (context) =>
    lateLimits(
      context,
      false,
      'A limit that is early enough at the worst hour of the week would call with nothing wrong.',
    ),
  passing: () => judgedFor(example(), 'tank-leaks', 'sump'),
  // A delay of 30 hours uses up the time.
  failing: () => judgedFor(example(delayed(108_000)), 'tank-leaks', 'sump'),
};

function delayed(delayS: number) {
  return withSystem(({ alarms }) => ({ alarms: changed(alarms, 'too-cold', { delayS }) }));
}
