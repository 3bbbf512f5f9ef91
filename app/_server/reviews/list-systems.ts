import 'server-only';
import { z } from 'zod';
import type { System, SystemKind } from '#core/facility/system';
import { ok, type Result } from '#core/result';
import type { DutyException } from '#core/rota/rota';
import { listReviewStates, type ReviewState } from '#data/reviews/states';
import { listRuns } from '#data/reviews/runs';
import { findExceptions } from '#data/rota/exceptions';
import { listSites, type SiteEntry } from '#data/sites';
import { now } from '../clock';
import { may, mayBeginSite } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { dayIn } from '../local-day';
import { type KnownOfAll, knownOfAll, knownOfSite } from '../overview/known-now';
import { type SystemNow, systemNow } from '../overview/system-now';
import { type OnNow, whoIsOn } from '../rota/on-now';
import { reviewStateOf, type SystemReviewState } from './review-state';
import { storedSite } from './stored-site';

/** A site in words. */
export interface SiteLine {
  key: string;
  name: string;
  /** IANA zone. */
  zone: string;
  systems: number;
  /** Who is on now, and who comes next. */
  on: OnNow;
}

/** A system with what its review says, and how it stands now. */
export interface SystemLine {
  site: { key: string; name: string; zone: string };
  key: string;
  name: string;
  kind: SystemKind;
  tanks: number;
  /** Animals in it. */
  animals: number;
  /** Water at the running level, L; tanks of unknown volume count nothing. */
  volumeL: number;
  review: SystemReviewState;
  now: SystemNow;
}

export interface SystemList {
  /** The instant it speaks of, UTC, ISO. */
  at: string;
  sites: SiteLine[];
  systems: SystemLine[];
  /** Whether the person may begin a site that is not there yet. */
  mayBegin: boolean;
}

/** Nothing has to be said to list systems; a site narrows the list down to its own. */
export const listSystemsShape = z.object({ site: z.string().optional() }).default({});

/**
 * Every system of every site that the person may see, with what its review says or how far it is, and how it stands now:
 * alarms, rounds, states, readings. However many sites and systems there are, it asks the database nine questions, and three
 * for each site that keeps sheets, once each site was read.
 */
export async function listSystems(
  who: Who,
  { site }: z.output<typeof listSystemsShape> = {},
): Promise<Result<SystemList, Refusal>> {
  const all = (await listSites()).filter(({ key }) => may(who, 'see', key));
  const entries = all.filter(({ key }) => site === undefined || key === site);
  const ids = entries.map(({ id }) => id);
  const at = now();
  const [states, runs, known, exceptions] = await Promise.all([
    listReviewStates(ids),
    listRuns(ids),
    knownOfAll(ids, at),
    findExceptions(ids, at),
  ]);
  const stored = new Map(states.map((state) => [state.systemId, state]));
  const parts = await Promise.all(
    entries.map((entry) => {
      const run = runs.find(({ siteId }) => siteId === entry.id);
      return partOf(entry, { stored, run, exceptions: exceptions.get(entry.id) ?? [] }, known);
    }),
  );
  return ok({
    at: at.toISOString(),
    sites: parts.map((part) => part.site),
    systems: parts.flatMap((part) => part.systems),
    mayBegin: mayBeginSite(who),
  });
}

interface Reviews {
  stored: ReadonlyMap<string, ReviewState>;
  run: Awaited<ReturnType<typeof listRuns>>[number] | undefined;
  /** Swaps and leave of the site. */
  exceptions: readonly DutyException[];
}

async function partOf(
  entry: SiteEntry,
  reviews: Reviews,
  all: KnownOfAll,
): Promise<{ site: SiteLine; systems: SystemLine[] }> {
  const { key, name, zone } = entry;
  const site = await storedSite(entry, dayIn(zone, all.at));
  if (!site) return { site: { key, name, zone, systems: 0, on: { on: [], next: [] } }, systems: [] };
  const { facility, reviewed, hashes, systemIds } = site;
  const known = await knownOfSite(all, entry, facility);
  const systems = reviewed.systems.map((system): SystemLine => {
    const review = reviewStateOf({ hashes, systemIds, ...reviews }, system.key);
    return {
      site: { key, name, zone },
      ...lineOf(system),
      review,
      now: systemNow(known, system, systemIds.get(system.key) ?? '', summaryIn(review)),
    };
  });
  const on = whoIsOn({ ...facility, exceptions: reviews.exceptions }, all.at.getTime());
  return { site: { key, name, zone, systems: systems.length, on }, systems };
}

/** What a review says in short; while a new one is under way, what the one before said. */
function summaryIn(review: SystemReviewState) {
  return review.state === 'current' ? review.summary : review.state === 'under-way' ? review.before : null;
}

function lineOf({ key, name, kind, tanks, stock }: System): Omit<SystemLine, 'site' | 'review' | 'now'> {
  const animals = stock.reduce((sum, { count }) => sum + count, 0);
  const volumeL = tanks.reduce((sum, tank) => sum + (tank.role === 'reservoir' ? 0 : (tank.volumeL.value ?? 0)), 0);
  return { key, name, kind, tanks: tanks.length, animals, volumeL };
}
