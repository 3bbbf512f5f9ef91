import 'server-only';
import type { z } from 'zod';
import type { Facility } from '#core/facility/facility';
import { ok, type Result, refused } from '#core/result';
import { turnsOf } from '#core/rota/turns';
import { type WalkDue, walksDue } from '#core/rounds/due';
import { addDays } from '#core/time/add-days';
import { countDecided } from '#data/rota/changes';
import { findFeed } from '#data/rota/feeds';
import { findSiteById } from '#data/sites';
import { feedAddress } from '#shape/rota/feed';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Visit } from '../gate/visit';
import { dayIn } from '../local-day';
import { storedSite } from '../reviews/stored-site';
import { rotaOf } from './rota-of';
import { writeCalendar } from './write-calendar';
import { writeRounds } from './write-rounds';

export const readFeedShape = feedAddress;

const DAY_MS = 86_400_000;
const BACK_MS = 28 * DAY_MS;
const AHEAD_MS = 90 * DAY_MS;

/**
 * The rota as a calendar, from 28 days back to 90 ahead, or when rounds are due in the coming 60 days, for whoever has the
 * address. It says who is on and when, and nothing of any alarm.
 */
export async function readFeed(
  _visit: Visit,
  { token: { siteId, token } }: z.output<typeof readFeedShape>,
): Promise<Result<string, Refusal>> {
  const nothing = refused({ why: 'not-found', what: 'calendar' } as const);
  const feed = siteId === '' ? null : await findFeed(siteId, token);
  const entry = feed && (await findSiteById(siteId));
  const at = now();
  const stored = entry && (await storedSite(entry, dayIn(entry.zone, at)));
  if (!(stored && entry)) return nothing;
  const from = at.getTime() - BACK_MS;
  const sequence = Math.max(0, entry.revision - 1) + (await countDecided(siteId));
  if (feed.scope === 'rounds') return ok(writeRounds(entry, roundsOf(stored.facility, at), sequence, at));
  const rota = await rotaOf(entry.id, stored.facility, from);
  const turns = turnsOf(rota, from, at.getTime() + AHEAD_MS);
  const mine = feed.scope === 'mine' ? feed.person : undefined;
  const { exceptions } = rota;
  return ok(writeCalendar({ site: entry, facility: stored.facility, turns, exceptions, mine, sequence, at }));
}

/** Days ahead for which rounds are told; those that were missed stand on their own page. */
const ROUNDS_AHEAD = 60;

function roundsOf({ rounds, shifts, site }: Facility, at: Date): WalkDue[] {
  const today = dayIn(site.zone, at);
  return walksDue(rounds, site.zone, today, addDays(today, ROUNDS_AHEAD), shifts);
}
