import 'server-only';
import { z } from 'zod';
import type { System, SystemKind } from '#core/facility/system';
import { ok, type Result } from '#core/result';
import { listReviewStates, type ReviewState } from '#data/reviews/results';
import { listRuns } from '#data/reviews/runs';
import { listSites, type SiteEntry } from '#data/sites';
import { now } from '../clock';
import { may, mayBeginSite } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { dayIn } from '../local-day';
import { reviewStateOf, type SystemReviewState } from './review-state';
import { storedSite } from './stored-site';

/** A site in words. */
export interface SiteLine {
  key: string;
  name: string;
  /** IANA zone. */
  zone: string;
  systems: number;
}

/** A system with what its review says. */
export interface SystemLine {
  site: SiteLine;
  key: string;
  name: string;
  kind: SystemKind;
  tanks: number;
  /** Animals in it. */
  animals: number;
  /** Water at the running level, L; tanks of unknown volume count nothing. */
  volumeL: number;
  review: SystemReviewState;
}

export interface SystemList {
  sites: SiteLine[];
  systems: SystemLine[];
  /** Whether the person may begin a site that is not there yet. */
  mayBegin: boolean;
}

/** Nothing has to be said to list systems. */
export const listSystemsShape = z.unknown();

/**
 * Every system of every site that the person may see, with what its review says or how far it is. However many sites there
 * are, it asks the database three questions once each site was read.
 */
export async function listSystems(who: Who): Promise<Result<SystemList, Refusal>> {
  const entries = (await listSites()).filter(({ key }) => may(who, 'see', key));
  const ids = entries.map(({ id }) => id);
  const [states, runs] = await Promise.all([listReviewStates(ids), listRuns(ids)]);
  const stored = new Map(states.map((state) => [state.systemId, state]));
  const instant = now();
  const list: SystemList = { sites: [], systems: [], mayBegin: mayBeginSite(who) };
  for (const entry of entries) {
    const run = runs.find(({ siteId }) => siteId === entry.id);
    const lines = await linesOf(entry, dayIn(entry.zone, instant), stored, run);
    list.sites.push({ key: entry.key, name: entry.name, zone: entry.zone, systems: lines.length });
    list.systems.push(...lines);
  }
  return ok(list);
}

async function linesOf(
  { key, name, zone, ...entry }: SiteEntry,
  on: string,
  stored: ReadonlyMap<string, ReviewState>,
  run: Awaited<ReturnType<typeof listRuns>>[number] | undefined,
): Promise<SystemLine[]> {
  const site = await storedSite({ key, name, zone, ...entry }, on);
  if (!site) return [];
  const { systems } = site.facility;
  const known = { hashes: site.hashes, systemIds: site.systemIds, stored, run };
  return systems.map((system) => ({
    site: { key, name, zone, systems: systems.length },
    ...lineOf(system),
    review: reviewStateOf(known, system.key),
  }));
}

function lineOf({ key, name, kind, tanks, stock }: System): Omit<SystemLine, 'site' | 'review'> {
  const animals = stock.reduce((sum, { count }) => sum + count, 0);
  const volumeL = tanks.reduce((sum, tank) => sum + (tank.role === 'reservoir' ? 0 : (tank.volumeL.value ?? 0)), 0);
  return { key, name, kind, tanks: tanks.length, animals, volumeL };
}
