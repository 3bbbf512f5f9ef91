import { type AlarmDefinition, isDerived, sensorsNamed } from '../alarms/definition';
import { isWithin, type LimitSide, proposeLimit } from '../alarms/design/limit';
import { type Consequence, CONSEQUENCES, needsMoreThanPeople, priorityFor } from '../alarms/design/priority';
import { healthyCourses, healthyTrials, type HealthyCourse } from './alarm-swing';
import type { Context } from './context';
import { reasonNot } from './reason-not';
import type { AlarmDesign, AlarmInCase, FaultCase, LimitDesign } from './result';

/** Quantities that the model does not reckon with: an alarm on one is never raised in it, whatever happens. */
const UNCARRIED: ReadonlySet<string> = new Set(['redox', 'nitrite', 'nitrate', 'phosphate', 'pressure', 'turbidity']);

/** What the review makes of each alarm of a system: worked out once, when first asked for. */
export function alarmDesigns(context: Context): AlarmDesign[] {
  if (context.designs) return context.designs;
  const isJudged = reasonNot(context.view('nominal')) === null;
  const trials = isJudged && context.system.alarms.length > 0 ? healthyTrials(context) : [];
  const cases = [...context.judged.values()];
  const designs = context.system.alarms.map((alarm) => designOf(context, alarm, cases, healthyCourses(alarm, trials)));
  context.designs = designs;
  return designs;
}

interface Told {
  of: FaultCase;
  alarm: AlarmInCase;
}

function designOf(
  context: Context,
  alarm: AlarmDefinition,
  cases: readonly FaultCase[],
  healthy: readonly HealthyCourse[],
): AlarmDesign {
  const told = cases.flatMap((of) => {
    const found = of.alarms?.find((one) => one.alarm === alarm.key);
    return found ? [{ of, alarm: found }] : [];
  });
  const raised = told.filter((one) => one.alarm.afterS !== null);
  const deciding = decidingOf(raised);
  const consequence = deciding ? consequenceOf(deciding.of) : 'none';
  const availableS = deciding?.alarm.leftS ?? null;
  return {
    alarm: alarm.key,
    isCarried: isCarried(context, alarm),
    raisedIn: raised.length,
    consequence,
    case: deciding?.of.id ?? null,
    availableS,
    neededS: deciding?.alarm.neededS ?? null,
    proposed: priorityFor(consequence, availableS ?? Number.POSITIVE_INFINITY),
    ...(availableS !== null && needsMoreThanPeople(consequence, availableS) ? { needsMore: true as const } : {}),
    limits: limitsOf(alarm, told, healthy),
  };
}

function consequenceOf({ claimed }: FaultCase): Consequence {
  return claimed.outcomes[0]?.harm.class ?? 'none';
}

/**
 * The case by which an alarm is as urgent as it is: of those it is the first to tell of, the gravest harm, and of these the
 * one that leaves the least time in which acting still helps; where none leaves any, the one that comes nearest to it.
 */
function decidingOf(raised: readonly Told[]): Told | null {
  const harmful = raised.filter(({ of, alarm }) => alarm.leftS !== null && of.claimed.outcomes.length > 0);
  const first = harmful.filter(({ alarm }) => alarm.isFirst);
  const among = first.length > 0 ? first : harmful;
  const gravest = CONSEQUENCES.find((one) => among.some(({ of }) => consequenceOf(of) === one));
  const alike = among.filter(({ of }) => consequenceOf(of) === gravest);
  const left = ({ alarm }: Told) => alarm.leftS ?? 0;
  const inTime = alike.filter((one) => left(one) > 0).sort((a, b) => left(a) - left(b));
  return inTime[0] ?? alike.sort((a, b) => left(b) - left(a))[0] ?? null;
}

/** Whether the model can raise it at all. */
function isCarried({ system }: Context, { on }: AlarmDefinition): boolean {
  if (on.kind === 'silent' || on.kind === 'silent-sensor' || on.kind === 'frozen') return false;
  return sensorsNamed(on).every((key) => {
    const quantity = system.sensors.find((one) => one.key === key)?.quantity;
    return !isDerived(key) && quantity !== undefined && !UNCARRIED.has(quantity);
  });
}

function limitsOf({ on }: AlarmDefinition, told: readonly Told[], healthy: readonly HealthyCourse[]): LimitDesign[] {
  if (on.kind !== 'sensor' || healthy.length === 0) return [];
  return (['above', 'below'] as const).flatMap((side) => {
    const limit = on[side];
    if (limit === undefined) return [];
    const demands = told.flatMap(({ of, alarm: { wouldDo } }) =>
      wouldDo?.[side] === undefined ? [] : [{ case: of.id, value: wouldDo[side] }],
    );
    const { value, case: id, hopeless } = proposeLimit(side, demands);
    const farthest = farthestOf(side, healthy);
    return [
      {
        side,
        limit,
        healthy: { value: farthest.value, state: farthest.state },
        isWithin: isWithin(side, limit, { low: farthest.value, high: farthest.value }),
        isRaisedHealthy: healthy.some(({ isRaised }) => isRaised),
        proposed: value,
        proposedBy: id,
        hopeless: hopeless.length,
        isLate: value !== null && (side === 'above' ? limit > value : limit < value),
        hasRoom: value === null || !isWithin(side, value, { low: farthest.value, high: farthest.value }),
      },
    ];
  });
}

function farthestOf(
  side: LimitSide,
  healthy: readonly HealthyCourse[],
): { value: number; state: HealthyCourse['state'] } {
  const ends = healthy.map(({ state, swing }) => ({ state, value: side === 'above' ? swing.high : swing.low }));
  return ends.reduce((far, one) => ((side === 'above' ? one.value > far.value : one.value < far.value) ? one : far));
}
