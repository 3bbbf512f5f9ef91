import { changed, example, withSystem } from './example/example';
import { caseName, judgedLimits } from './facts/alarm-limits';
import { judgedFor } from './facts/judged';
import { figure } from './facts/words';
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
    judgedLimits(context).flatMap(
      ({ alarm, unit, limit: { side, limit, proposed, proposedBy, isLate, hasRoom, healthy } }) => {
        if (!isLate || hasRoom || proposed === null) return [];
        return [
          {
            cause: alarm.name,
            consequence: 'A limit that is early enough at the worst hour of the week would call with nothing wrong.',
            figures: [
              figure('limit', limit, unit, 2),
              figure(`early enough ${side === 'above' ? 'up to' : 'down to'}`, proposed, unit, 2),
              figure(side === 'above' ? 'highest, healthy' : 'lowest, healthy', healthy.value, unit, 2),
              { name: 'fault case', value: caseName(context, proposedBy) },
            ],
          },
        ];
      },
    ),
  passing: () => judgedFor(example(), 'tank-leaks', 'sump'),
  // A delay of 26 hours uses up the time.
  failing: () => judgedFor(example(delayed(94_000)), 'tank-leaks', 'sump'),
};

function delayed(delayS: number) {
  return withSystem(({ alarms }) => ({ alarms: changed(alarms, 'too-cold', { delayS }) }));
}
