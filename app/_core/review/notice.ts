import { isOff, isTested, safeguardsOf, type Column } from '../plans/credit';
import type { AnsweredBy } from '../facility/site';
import { reachedAfter } from '../rota/cover';
import type { Aspect } from '../rounds/slot';
import { firstSeen } from '../rounds/walks';
import { WATCHDOG } from '../simulate/build-alarms';
import { WEEK } from '../time/week';
import { type Context, HORIZON, type View } from './context';
import type { Notice } from './result';
import type { Subject, Trial } from './trial';

/** When somebody knows and when it is put right, s after the onset; null for never. */
export interface Response {
  noticeS: number | null;
  notice: Notice;
  putRightS: number | null;
}

/** An alarm that was raised, with those who answer it. */
interface Call {
  key: string;
  atS: number;
  answeredBy: AnsweredBy;
}

/** Alarms of a course that are counted on in a column: each with its way to a person not off and, as tested, proved. */
export function callsOf(context: Context, trial: Trial, column: Column): Call[] {
  const ledger = new Map(safeguardsOf(context.facility, context.system).map((s) => [s.key, s]));
  const counts = (key: string | undefined) => {
    const safeguard = key === undefined ? undefined : ledger.get(key);
    if (!safeguard) return column === 'claimed';
    return !isOff(safeguard, context.on) && (column === 'claimed' || isTested(safeguard, context.on));
  };
  const calls: Call[] = [];
  for (const [key, atS] of trial.record.alarms) {
    const outside = key === WATCHDOG ? context.facility.site.watchdog : undefined;
    const alarm = outside ?? context.system.alarms.find((a) => a.key === key);
    if (alarm && alarm.answeredBy !== 'nobody' && counts(alarm.safeguard))
      calls.push({ key, atS, answeredBy: alarm.answeredBy });
  }
  return calls;
}

/** What a round would see of a course, and from when, s after the onset. */
export function signsOf(subject: Subject, trial: Trial): Map<Aspect, number> {
  const signs = new Map<Aspect, number>(subject.fault.shows.map((aspect) => [aspect, 0]));
  const earlier = (aspect: Aspect, t: number) => signs.set(aspect, Math.min(t, signs.get(aspect) ?? t));
  for (const [aspect, t] of trial.record.signs) earlier(aspect as Aspect, t);
  for (const harm of trial.record.harms) if (harm.class === 'floor') earlier('floor', harm.atS);
  for (const { limit, fromS } of trial.record.exposures) {
    if (trial.machine.limits[limit]?.class === 'animals') earlier('animals', fromS);
  }
  return signs;
}

/**
 * Who comes to know of a course first, and how soon it is put right, when it begins at an hour of the week.
 * Every way of knowing is followed to its end, so that one more can never make the answer later.
 * @param onsetS s since Monday 00:00
 * @param repairS s of work; Infinity when nobody has the means
 */
export function respond(
  view: View,
  calls: Call[],
  signs: Map<Aspect, number>,
  onsetS: number,
  repairS: number,
): Response {
  let response: Response = { noticeS: null, notice: { by: 'nobody' }, putRightS: null };
  const offer = (noticeS: number, notice: Notice, reachedS: number | null) => {
    const putRightS = reachedS === null || repairS === Number.POSITIVE_INFINITY ? null : noticeS + reachedS + repairS;
    const sooner = response.noticeS === null || noticeS < response.noticeS;
    const better = putRightS !== null && (response.putRightS === null || putRightS < response.putRightS);
    response = {
      noticeS: sooner ? noticeS : response.noticeS,
      notice: sooner ? notice : response.notice,
      putRightS: better ? putRightS : response.putRightS,
    };
  };
  for (const call of calls) {
    const reached = reachedAfter(view.cover, (onsetS + call.atS) % WEEK, call.answeredBy);
    // An alarm that reaches nobody is no notice.
    if (reached !== null) offer(call.atS, { by: call.key === WATCHDOG ? 'watchdog' : 'alarm', key: call.key }, reached);
  }
  const seen = firstSeen(view.walks, onsetS, signs, HORIZON);
  if (seen) offer(seen.afterS, { by: 'round', key: seen.key }, 0);
  return response;
}
