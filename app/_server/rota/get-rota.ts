import 'server-only';
import type { z } from 'zod';
import type { Facility } from '#core/facility/facility';
import { ok, type Result } from '#core/result';
import { nobodyOn, type Span } from '#core/rota/nobody';
import { restWarnings, type RestWarning } from '#core/rota/rest';
import { segmentsOf } from '#core/rota/segments';
import type { Rota } from '#core/rota/turns';
import { addDays } from '#core/time/add-days';
import { dayStart } from '#core/time/zone';
import { listChanges } from '#data/rota/changes';
import { type FeedScope, feedsOf, personOf } from '#data/rota/feeds';
import { sitePlace } from '#shape/reviews/case-place';
import { now } from '../clock';
import { LOCAL_PERSON, type Who } from '../gate/who';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import { isMailConfigured } from '../mail/send-mail';
import { findStoredSite } from '../reviews/find-stored-site';
import { countOpen } from './changes/count-open';
import { type OnNow, whoIsOn } from './on-now';
import { rotaOf } from './rota-of';
import { type RotaPerson, rotaPeople } from './rota-people';
import { type LackingSaid, lackingSaid, type TwoSitesSaid, twoSitesSaid } from './rota-warnings';

/** One day of the chart; instants in ms. */
export interface RotaDay {
  date: string;
  /** Its first moment, and the first of the next day. */
  from: number;
  to: number;
  segments: { from: number; to: number; onSite: string[]; onCall: string[] }[];
}

/** Who can come, and when. */
export interface RotaPage {
  site: { key: string; name: string; zone: string };
  /** ms */
  now: number;
  on: OnNow;
  days: RotaDay[];
  nobody: Span[];
  /** Competences that are lacking at some time of the days shown. */
  lacking: LackingSaid[];
  /** Who is on at another site at the same time. */
  twoSites: TwoSitesSaid[];
  /** How many leave and swaps wait for an answer. */
  openChanges: number;
  people: RotaPerson[];
  warnings: (Omit<RestWarning, 'person'> & { person: string })[];
  /** Addresses for their own calendar that whoever asks has. */
  feeds: { id: string; scope: FeedScope; createdAt: string }[];
  /** Whether whoever asks is somebody of the rota. */
  isOnRota: boolean;
  isMailed: boolean;
  mayDescribe: boolean;
  mayPeople: boolean;
}

export const getRotaShape = sitePlace;

/** Days that are shown, and those over which rest is looked at. */
const DAYS_SHOWN = 14;
const DAYS_OF_REST = 28;

/** The rota of a site: who is on, who is next, the coming fortnight, who can be reached, and what may breach rules of rest. */
export async function getRota(who: Who, { site }: z.output<typeof getRotaShape>): Promise<Result<RotaPage, Refusal>> {
  const found = await findStoredSite(who, 'see', site);
  if (!found.ok) return found;
  const { entry, stored, today } = found.value;
  const { facility } = stored;
  const isAccount = who.id !== LOCAL_PERSON.id;
  const from = dayStart(entry.zone, today);
  const to = dayStart(entry.zone, addDays(today, DAYS_SHOWN));
  const [people, rota, changes, feeds, self] = await Promise.all([
    rotaPeople(entry.id, facility),
    rotaOf(entry.id, facility, from),
    listChanges(entry.id, now()),
    isAccount ? feedsOf(entry.id, who.id) : [],
    isAccount ? personOf(entry.id, who.id) : null,
  ]);
  const names = namesIn(facility);
  const at = now().getTime();
  return ok({
    site: { key: entry.key, name: entry.name, zone: entry.zone },
    now: at,
    on: whoIsOn(rota, at),
    days: daysFrom(rota, today, names),
    nobody: nobodyOn(rota, at, to),
    lacking: lackingSaid(facility, rota, at, to),
    twoSites: await twoSitesSaid(who, { siteId: entry.id, facility, rota }, at, to),
    openChanges: countOpen(changes),
    people,
    warnings: restWarnings(rota, from, dayStart(entry.zone, addDays(today, DAYS_OF_REST))).map((warning) => ({
      ...warning,
      person: names(warning.person),
    })),
    feeds: feeds.map(({ id, scope, createdAt }) => ({ id, scope, createdAt: createdAt.toISOString() })),
    isOnRota: self !== null,
    isMailed: isMailConfigured(),
    mayDescribe: may(who, 'describe', site),
    mayPeople: may(who, 'people', site),
  });
}

function namesIn({ people }: Facility): (key: string) => string {
  const names = new Map(people.map(({ key, name }) => [key, name]));
  return (key) => names.get(key) ?? key;
}

function daysFrom(rota: Rota, today: string, names: (key: string) => string): RotaDay[] {
  const { zone } = rota.site;
  return Array.from({ length: DAYS_SHOWN }, (_, after) => {
    const date = addDays(today, after);
    const [from, to] = [dayStart(zone, date), dayStart(zone, addDays(date, 1))];
    const segments = segmentsOf(rota, from, to).map(({ onSite, onCall, ...span }) => ({
      ...span,
      onSite: onSite.map(names),
      onCall: onCall.map(names),
    }));
    return { date, from, to, segments };
  });
}
