import type { AlarmDefinition } from '../alarms/definition';
import { type LimitSide, valueInTime } from '../alarms/design/limit';
import type { AnsweredBy } from '../facility/site';
import type { LimitQuantity } from '../facility/stock';
import type { SensorQuantity } from '../facility/system';
import { reachedAfter } from '../rota/cover';
import { courseOf } from '../simulate/course-of';
import { HOUR, HOURS_OF_WEEK } from '../time/week';
import type { Context, View } from './context';
import { newsOf } from './news';
import type { Courses } from './outcome';
import { repairTime } from './repair';
import type { AlarmInCase, Harm, Outcome } from './result';
import type { Subject, Trial } from './trial';
import { worstHour } from './words';

/** What of harm a sensor of a quantity measures. */
const OF_HARM: Partial<Record<LimitQuantity, SensorQuantity>> = {
  temperature: 'temperature',
  salinity: 'salinity',
  oxygen: 'oxygen',
  ammonia: 'ammonia',
  ph: 'ph',
  oxidant: 'oxidant',
  'carbon-dioxide': 'carbon-dioxide',
};

/**
 * What each alarm has to do with a fault case, as it is described: when it is raised, how long is left then until the last
 * chance, and which limit would have been early enough. Asked of the worst hour, and of every hour for who hears of it first.
 *
 * @param outcomes   as claimed, gravest first; without any there is no last chance
 */
export function alarmsOfCase(
  context: Context,
  view: View,
  subject: Subject,
  courses: Courses,
  outcomes: readonly Outcome[],
): AlarmInCase[] {
  const [gravest] = outcomes;
  const hour = gravest ? worstHour(gravest) : 0;
  const trial = courses.trials[courses.byHour[hour % 24] ?? 0];
  if (!trial) return [];
  const { alarms: raised } = newsOf(context, view, subject, 'claimed', trial);
  const first = new Set(
    outcomes.flatMap(({ noticeBy }) => noticeBy.flatMap(({ by, key }) => (by === 'alarm' && key ? [key] : []))),
  );
  const repairS = repairTime(context, view, subject);
  const lastS = gravest?.lastChanceS[hour] ?? null;
  return context.system.alarms.flatMap((alarm) => {
    const afterS = raised.get(alarm.key) ?? null;
    const isOfHarm = gravest !== undefined && watchesHarm(context, alarm, gravest.harm);
    if (afterS === null && !isOfHarm) return [];
    const neededS = needed(view, alarm.answeredBy) + repairS;
    const inTime = lastS === null || !isOfHarm ? {} : wouldDo(alarm, trial, lastS - neededS);
    const isFirst = first.has(alarm.key);
    return [
      {
        alarm: alarm.key,
        afterS: afterS === null ? null : Math.round(afterS),
        leftS: afterS === null || lastS === null ? null : Math.round(lastS - afterS),
        neededS: Number.isFinite(neededS) ? Math.round(neededS) : null,
        ...(isFirst ? { isFirst } : {}),
        ...inTime,
      },
    ];
  });
}

/** Whether a limit is set on what does the harm, in its tank, on its side. */
function watchesHarm({ system }: Context, { on }: AlarmDefinition, { what, tank, direction }: Harm): boolean {
  if (on.kind !== 'sensor' || on[direction] === undefined) return false;
  const sensor = system.sensors.find(({ key }) => key === on.sensor);
  const quantity = OF_HARM[what as LimitQuantity];
  return quantity !== undefined && sensor?.quantity === quantity && sensor.tank === tank;
}

/** s from a call to standing there, at the worst hour of the week; Infinity when at some hour nobody ever comes. */
function needed({ cover, reach }: View, answeredBy: AnsweredBy): number {
  const id = String(answeredBy);
  const known = reach.get(id);
  if (known !== undefined) return known;
  const hours = Array.from({ length: HOURS_OF_WEEK }, (_, h) => reachedAfter(cover, h * HOUR, answeredBy) ?? Infinity);
  const worst = Math.max(...hours);
  reach.set(id, worst);
  return worst;
}

/** The value up to which an alarm on either side would have been early enough. @param latestS when it must have been raised */
function wouldDo(
  alarm: AlarmDefinition,
  { machine, record, hour }: Trial,
  latestS: number,
): Pick<AlarmInCase, 'wouldDo'> {
  const watch = machine.alarms.find(({ key }) => key === alarm.key);
  const [compared] = watch?.watches ?? [];
  if (!compared || alarm.on.kind !== 'sensor') return {};
  const valueAt = courseOf({ record, machine }, hour * HOUR, [compared.signal]);
  const sides = (['above', 'below'] as const).filter(
    (side) => alarm.on.kind === 'sensor' && alarm.on[side] !== undefined,
  );
  const value = (side: LimitSide) => valueInTime(side, valueAt, latestS - alarm.delayS);
  return { wouldDo: Object.fromEntries(sides.map((side) => [side, value(side)])) };
}
