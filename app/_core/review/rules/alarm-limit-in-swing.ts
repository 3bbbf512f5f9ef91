import { changed, example, withSystem } from './example/example';
import { judgedLimits } from './facts/alarm-limits';
import { judgedFor } from './facts/judged';
import { figure } from './facts/words';
import type { Rule } from './rule';

/** A limit that a healthy system passes by itself. */
export const rule: Rule = {
  id: 'alarm-limit-in-swing',
  title: "An alarm's limit lies within what the healthy system does",
  why: 'What calls when nothing is wrong is soon no longer answered.',
  source:
    'A limit inside the normal range is a design problem to report, not a number to fudge (published alarm guidance)',
  grade: 'medium',
  remedy: 'limit-off-swing',
  check: (context) =>
    judgedLimits(context).flatMap(({ alarm, unit, limit: { side, limit, healthy, isWithin, isRaisedHealthy } }) => {
      if (!isWithin) return [];
      const farthest = side === 'above' ? 'highest' : 'lowest';
      const when =
        healthy.state === 'normal' ? 'in normal running' : `in the state ${healthy.state.replaceAll('-', ' ')}`;
      const what = isRaisedHealthy ? 'It calls' : 'Only its delay keeps it from calling';
      return [
        {
          cause: alarm.name,
          consequence: `${what} with nothing wrong, ${when}.`,
          figures: [figure('limit', limit, unit, 2), figure(`${farthest}, healthy`, healthy.value, unit, 2)],
          ...(isRaisedHealthy ? {} : { grade: 'low' as const }),
        },
      ];
    }),
  passing: () => judgedFor(example(), 'tank-leaks', 'sump'),
  failing: () => judgedFor(example(tooWarm(25.5)), 'tank-leaks', 'sump'),
};

function tooWarm(above: number) {
  return withSystem(({ alarms }) => ({
    alarms: changed(alarms, 'too-warm', { on: { kind: 'sensor', sensor: 'display-temperature', above } }),
  }));
}
