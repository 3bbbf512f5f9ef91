import 'server-only';
import { z } from 'zod';
import type { Facility } from '#core/facility/facility';
import { ok, type Result } from '#core/result';
import type { DutyException } from '#core/rota/rota';
import { segmentsOf } from '#core/rota/segments';
import { type Rota, turnsOf } from '#core/rota/turns';
import { addDays } from '#core/time/add-days';
import { DAYS } from '#core/facility/site';
import { dayOf } from '#core/time/day-of';
import { dayStart } from '#core/time/zone';
import { sitePlace } from '#shape/reviews/case-place';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { findStoredSite } from '../reviews/find-stored-site';
import { rotaOf } from './rota-of';

/** Somebody in a stretch of a day, by name. */
export interface WeekPerson {
  name: string;
  kind: 'on-site' | 'on-call';
  /** In whose place; null for a turn of their own. */
  insteadOf: string | null;
}

/** One day of the week; instants in ms. */
export interface WeekDay {
  date: string;
  /** Hours it lasts: 24, but when the clocks change. */
  hours: number;
  /** Stretches from its first moment to the next day, without a hole: nobody where there are no people. */
  lines: { from: number; people: WeekPerson[] }[];
  /** Names of those on leave at some time of it. */
  away: string[];
}

/** A week of the rota. */
export interface WeekPage {
  site: { key: string; name: string; zone: string };
  /** ms */
  now: number;
  days: WeekDay[];
  /** Mondays of the weeks before and after, ISO dates. */
  before: string;
  after: string;
}

export const getWeekShape = sitePlace.extend({ from: z.iso.date().optional().catch(undefined) });

/** Who is on in the week that a day lies in, Monday first; this one when none is named. */
export async function getWeek(
  who: Who,
  { site, from }: z.output<typeof getWeekShape>,
): Promise<Result<WeekPage, Refusal>> {
  const found = await findStoredSite(who, 'see', site);
  if (!found.ok) return found;
  const { entry, stored, today } = found.value;
  const day = from ?? today;
  const monday = addDays(day, -DAYS.indexOf(dayOf(day)));
  const rota = await rotaOf(entry.id, stored.facility, dayStart(entry.zone, monday));
  return ok({
    site: { key: entry.key, name: entry.name, zone: entry.zone },
    now: now().getTime(),
    days: DAYS.map((_, place) => dayOfWeek(rota, stored.facility, addDays(monday, place))),
    before: addDays(monday, -7),
    after: addDays(monday, 7),
  });
}

function dayOfWeek(rota: Rota, { people }: Facility, date: string): WeekDay {
  const { zone } = rota.site;
  const [from, to] = [dayStart(zone, date), dayStart(zone, addDays(date, 1))];
  const names = new Map(people.map(({ key, name }) => [key, name]));
  const nameOf = (key: string) => names.get(key) ?? key;
  const turns = turnsOf(rota, from, to);
  const personAt =
    (at: number, kind: WeekPerson['kind']) =>
    (key: string): WeekPerson => {
      const turn = turns.find((one) => one.person === key && one.kind === kind && one.start <= at && at < one.end);
      return { name: nameOf(key), kind, insteadOf: turn?.insteadOf === undefined ? null : nameOf(turn.insteadOf) };
    };
  const lines = segmentsOf(rota, from, to).map((segment) => ({
    from: segment.from,
    people: [
      ...segment.onSite.map(personAt(segment.from, 'on-site')),
      ...segment.onCall.map(personAt(segment.from, 'on-call')),
    ],
  }));
  const isAway = (one: DutyException) => one.kind === 'leave' && one.from < to && from < one.to;
  const away = rota.exceptions.filter(isAway).flatMap((one) => (one.kind === 'leave' ? [nameOf(one.person)] : []));
  return { date, hours: (to - from) / 3_600_000, lines, away: [...new Set(away)] };
}
