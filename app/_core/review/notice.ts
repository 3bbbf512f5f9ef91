import type { AnsweredBy } from '../facility/site';
import type { Column } from '../plans/credit';
import { type Able, reachedAfter, staffed } from '../rota/cover';
import type { Aspect } from '../rounds/slot';
import { firstMeeting, meetings } from '../rounds/walks';
import { WATCHDOG } from '../simulate/build-alarms';
import { WEEK } from '../time/week';
import { type Context, HORIZON, type View } from './context';
import type { News } from './news';
import type { Notice } from './result';

/** When somebody knows and when it is put right, s after the onset; null for never. */
export interface Response {
  noticeS: number | null;
  notice: Notice;
  putRightS: number | null;
}

/** An alarm that was raised, with those who answer it. */
export interface Call {
  key: string;
  atS: number;
  answeredBy: AnsweredBy;
}

/** Alarms that are counted on in a column: each with its way to a person not off and, as tested, proved. */
export function callsOf(context: Context, news: News, column: Column): Call[] {
  const calls: Call[] = [];
  for (const [key, atS] of news.alarms) {
    const outside = key === WATCHDOG ? context.facility.site.watchdog : undefined;
    const alarm = outside ?? context.system.alarms.find((a) => a.key === key);
    if (alarm && alarm.answeredBy !== 'nobody' && context.credit[column](alarm.safeguard))
      calls.push({ key, atS, answeredBy: alarm.answeredBy });
  }
  return calls;
}

/**
 * Who comes to know of a course first, and how soon it is put right, when it begins at an hour of the week.
 * Every way of knowing is followed to its end, so that one more can never make the answer later.
 * @param onsetS s since Monday 00:00
 * @param repairS s of work; Infinity when nobody has the means
 * @param able who can do it; everybody when null. Whoever cannot still notices, and calls whoever can
 */
export function respond(
  view: Pick<View, 'cover' | 'walks'>,
  calls: readonly Call[],
  signs: ReadonlyMap<Aspect, number>,
  onsetS: number,
  repairS: number,
  able: Able | null = null,
): Response {
  return responder(calls, signs, repairS, able)(view, onsetS);
}

/** As `respond`, for a course that is asked about many onsets: what does not depend on the hour is found out once. */
export function responder(
  calls: readonly Call[],
  signs: ReadonlyMap<Aspect, number>,
  repairS: number,
  able: Able | null = null,
): (view: Pick<View, 'cover' | 'walks'>, onsetS: number) => Response {
  const first = soonestByWhom(calls);
  let walked: View['walks'] | null = null;
  let met: ReturnType<typeof meetings> = [];
  return (view, onsetS) => {
    const response: Response = { noticeS: null, notice: { by: 'nobody' }, putRightS: null };
    for (const call of first) {
      const reached = reachedAfter(view.cover, (onsetS + call.atS) % WEEK, call.answeredBy);
      // An alarm that reaches nobody is no notice.
      if (reached === null) continue;
      const there = able ? reachedAfter(view.cover, (onsetS + call.atS) % WEEK, call.answeredBy, able) : reached;
      const notice: Notice = { by: call.key === WATCHDOG ? 'watchdog' : 'alarm', key: call.key };
      offer(response, call.atS, notice, (there ?? Number.POSITIVE_INFINITY) + repairS);
    }
    if (walked !== view.walks) met = meetings(view.walks, signs);
    walked = view.walks;
    const seen = firstMeeting(met, onsetS, HORIZON);
    if (!seen) return response;
    if (!able) {
      offer(response, seen.afterS, { by: 'round', key: seen.key }, repairS);
      return response;
    }
    // Whoever walks the first round calls whoever can; a later round may be walked by somebody who can.
    const there = reachedAfter(view.cover, (onsetS + seen.afterS) % WEEK, 'rota', able) ?? Number.POSITIVE_INFINITY;
    offer(response, seen.afterS, { by: 'round', key: seen.key }, there + repairS);
    const own = firstMeeting(
      met.filter(({ atS }) => staffed(view.cover, atS, able)),
      onsetS,
      HORIZON,
    );
    if (own) offer(response, own.afterS, { by: 'round', key: own.key }, repairS);
    return response;
  };
}

/** The first call to each of those who answer: whoever is called later is not there sooner. */
function soonestByWhom(calls: readonly Call[]): Call[] {
  const first = new Map<string, Call>();
  for (const call of calls) {
    const whom = typeof call.answeredBy === 'string' ? call.answeredBy : JSON.stringify(call.answeredBy);
    const known = first.get(whom);
    if (!known || call.atS < known.atS) first.set(whom, call);
  }
  return [...first.values()];
}

/** Take a way of knowing into account. @param thenS s from knowing to its being put right; Infinity for never */
function offer(response: Response, noticeS: number, notice: Notice, thenS: number): void {
  const putRightS = thenS === Number.POSITIVE_INFINITY ? null : noticeS + thenS;
  if (response.noticeS === null || noticeS < response.noticeS) {
    response.noticeS = noticeS;
    response.notice = notice;
  }
  if (putRightS !== null && (response.putRightS === null || putRightS < response.putRightS))
    response.putRightS = putRightS;
}
