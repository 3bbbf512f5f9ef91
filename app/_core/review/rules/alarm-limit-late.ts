import { changed, example, withSystem } from './example/example';
import { caseName, judgedLimits } from './facts/alarm-limits';
import { judgedFor } from './facts/judged';
import { figure } from './facts/words';
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
    judgedLimits(context).flatMap(
      ({ alarm, unit, limit: { side, limit, proposed, proposedBy, isLate, hasRoom, healthy } }) => {
        if (!isLate || !hasRoom || proposed === null) return [];
        return [
          {
            cause: alarm.name,
            consequence: 'When it calls, nobody can have it put right in time at the worst hour of the week.',
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
  failing: () => judgedFor(example(tooCold(23.4)), 'tank-leaks', 'sump'),
};

function tooCold(below: number) {
  return withSystem(({ alarms }) => ({
    alarms: changed(alarms, 'too-cold', { on: { kind: 'sensor', sensor: 'display-temperature', below } }),
  }));
}
