import 'server-only';
import { answersOf } from '#core/alarms/answers';
import { NOTHING_MEASURED, type PeopleFacts } from '#core/alarms/measured';
import { lastReached } from '#core/alarms/test-calls';
import { isNight } from '#core/rota/night';
import { daysBetween } from '#core/time/days';
import { answeredAlarms, findMeasured, keepMeasured, peopleByAccount } from '#data/calls/measured';
import { listReached } from '#data/calls/test-calls';
import { canonicalText } from '#data/canonical';
import { findSiteById } from '#data/sites';
import { inTransaction } from '#data/transaction';
import { now } from '../clock';
import { dayIn } from '../local-day';
import { askForReviews } from '../reviews/ask-for-reviews';

/** ms of the past that is measured: a year, so that both halves of it are in. Common practice, no source. */
const LOOKED_MS = 365 * 86_400_000;
/** Days by which the day somebody was reached has to move on before a review is reckoned anew for it. */
const MOVES_DAYS = 7;

/**
 * Measures what the record says of the people of a site, and has its reviews looked at again when that says something else. It
 * is kept, so that reviews follow the same figures wherever they are reckoned.
 *
 * @param at   the present
 */
export async function measurePeople(siteId: string, at: Date = now()): Promise<void> {
  const site = await findSiteById(siteId);
  if (!site) return;
  const before = (await findMeasured(siteId)) ?? NOTHING_MEASURED;
  const facts = await measure(siteId, site.zone, before, at);
  if (canonicalText(facts) === canonicalText(before)) return;
  await inTransaction(async (tx) => {
    await keepMeasured(tx, siteId, facts, at);
    await askForReviews(tx, site, at);
  });
}

async function measure(siteId: string, zone: string, before: PeopleFacts, at: Date): Promise<PeopleFacts> {
  const since = new Date(at.getTime() - LOOKED_MS);
  const [reached, people, alarms] = await Promise.all([
    listReached(siteId, since),
    peopleByAccount(siteId),
    answeredAlarms(siteId, since),
  ]);
  const days = [...reached.values()].flatMap((row) => {
    const [person, lastMs] = [people.get(row.account), lastReached(row)];
    return person === undefined || lastMs === null ? [] : [{ person, on: dayIn(zone, new Date(lastMs)) }];
  });
  return {
    reached: days.map((day) => movedOn(day, before)).sort((a, b) => (a.person < b.person ? -1 : 1)),
    ...answersOf(
      alarms.map((one) => ({ ...one, isNight: isNight(zone, one.raisedMs) })),
      at.getTime(),
    ),
  };
}

/** The day somebody was reached, or the one known before while that is hardly older. */
function movedOn(day: PeopleFacts['reached'][number], { reached }: PeopleFacts): PeopleFacts['reached'][number] {
  const known = reached.find(({ person }) => person === day.person);
  return known && known.on <= day.on && daysBetween(known.on, day.on) < MOVES_DAYS ? known : day;
}
