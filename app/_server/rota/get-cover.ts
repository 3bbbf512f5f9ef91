import 'server-only';
import type { z } from 'zod';
import type { Facility } from '#core/facility/facility';
import { ok, type Result } from '#core/result';
import type { SystemDemand } from '#core/review/people/demand';
import { weeksAhead, type WeekAhead } from '#core/review/people/coming-weeks';
import { siteCover, type SiteCover } from '#core/review/people/site-cover';
import type { Typed } from '#core/review/people/what-if-fields';
import { behind } from '#core/rota/behind';
import type { DutyException } from '#core/rota/rota';
import { turnsApart } from '#core/rota/away';
import { turnsOf } from '#core/rota/turns';
import { addDays } from '#core/time/add-days';
import { mondayOf } from '#core/time/monday-of';
import { dayStart } from '#core/time/zone';
import { listDemands } from '#data/reviews/results';
import { readWhatIf, type ReadWhatIf, whatIfAsked } from '#shape/rota/what-if';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { findStoredSite } from '../reviews/find-stored-site';
import { isCurrent } from '../reviews/review-state';
import type { StoredSite } from '../reviews/stored-site';
import { awayReally } from './away-people';
import { rotaOf } from './rota-of';

/** A coming week that leaves less, and the swaps and leave without which it would not, or not so; none: shifts or clocks do. */
export interface WeekBehind extends WeekAhead {
  behind: DutyException[];
}

/** What the rota of a site leaves to spare, and what a change of its people would make of it. */
export interface CoverPage {
  site: { key: string; name: string; zone: string };
  /** As reviews see it: with what was measured of its people. */
  facility: Facility;
  column: 'claimed' | 'tested';
  cover: SiteCover;
  weeks: WeekBehind[];
  /** Names of the systems whose review is under way, or broke: nothing is said of them. */
  missing: string[];
  asked: Typed;
  wrong: ReadWhatIf['wrong'];
  mayDescribe: boolean;
}

export const getCoverShape = whatIfAsked;

/** Weeks ahead that are looked at, with the one under way. */
const WEEKS = 8;
const DAY_MS = 86_400_000;

/** How long after the onset it matters who is on: until the last chance, or until whoever comes has put it right, a week at most. */
function followedMs({ weakest: { lastS, way } }: WeekAhead): number {
  return Math.min(7 * DAY_MS, 1000 * Math.max(lastS, way?.putRightS ?? 0));
}

/**
 * The cover of a site over its usual week, its weakest hours, coming weeks that leave less, and what a change of its people would
 * make of it. Nothing is simulated and nothing is kept.
 */
export async function getCover(
  who: Who,
  { site, column, asked }: z.output<typeof getCoverShape>,
): Promise<Result<CoverPage, Refusal>> {
  const found = await findStoredSite(who, 'see', site);
  if (!found.ok) return found;
  const { entry, stored, today } = found.value;
  const { reviewed: facility } = stored;
  const monday = mondayOf(today);
  const span = [dayStart(entry.zone, monday), dayStart(entry.zone, addDays(monday, 7 * (WEEKS + 2)))] as const;
  const [demands, rota, away] = await Promise.all([
    demandsOf(entry.id, stored),
    rotaOf(entry.id, stored.facility, span[0]),
    awayReally(entry.id, stored.facility, ...span),
  ]);
  const { what, wrong } = readWhatIf(asked, facility);
  const told = new Set(demands.map(({ system }) => system));
  return ok({
    site: { key: entry.key, name: entry.name, zone: entry.zone },
    facility,
    column,
    cover: siteCover(facility, demands, today, what),
    weeks: weeksAhead(facility, demands, monday, WEEKS, (from, to) => turnsApart(turnsOf(rota, from, to), away)).map(
      (week) => ({ ...week, behind: behind(rota, Math.round(week.at), Math.round(week.at + followedMs(week))) }),
    ),
    missing: facility.systems.filter(({ key }) => !told.has(key)).map(({ name }) => name),
    asked,
    wrong,
    mayDescribe: may(who, 'describe', site),
  });
}

/** What the fault cases of a site ask of people, of each system whose review says what its inputs say now. */
async function demandsOf(siteId: string, { systemIds, hashes }: StoredSite): Promise<SystemDemand[]> {
  const kept = new Map((await listDemands(siteId)).map((one) => [one.systemId, one]));
  return [...systemIds].flatMap(([key, id]) => {
    const found = kept.get(id);
    return found?.demand && isCurrent(found, hashes.get(key)) ? [found.demand] : [];
  });
}
