import 'server-only';
import type { Bodies } from '#core/incidents/incident';
import { newestBy, standing } from '#core/incidents/story';
import { standingOf } from '#core/plans/due';
import type { SafeguardKind } from '#core/plans/safeguard';
import { safeguardsThen, type SafeguardThen } from '#data/incidents/safeguards-then';
import { dayIn } from '../local-day';
import type { IncidentAt } from './find-incident-at';

/** One safeguard as it stood when the fault began, and what was found of it. */
export interface SafeguardDeed {
  id: string;
  key: string;
  name: string;
  kind: SafeguardKind;
  /** Whether it belongs to the site and not to the system. */
  isOfSite: boolean;
  /** How it stood on that day. */
  state: 'tested' | 'untested' | 'off';
  /** Its latest test by that day. */
  last: { on: string; result: string } | null;
  /** Why it was off. */
  why: string | null;
  /** What was found; null where nothing was written yet. */
  found: (Bodies['safeguard'] & { entry: string }) | null;
}

/** What each safeguard did that the system could lean on when the fault began. */
export async function safeguardDeeds(at: IncidentAt, startMs: number): Promise<SafeguardDeed[]> {
  const { entry: site, incident, entries } = at;
  const when = new Date(startMs);
  const rows = await safeguardsThen(site.id, incident.systemId, when);
  const found = newestBy(standing(entries, 'safeguard'), ({ body }) => body?.safeguard ?? '');
  const day = dayIn(site.zone, when);
  return rows.map((row) => {
    const said = found.get(row.id);
    return { ...deedOf(row, day, when), found: said?.body ? { ...said.body, entry: said.id } : null };
  });
}

function deedOf(row: SafeguardThen, day: string, when: Date): Omit<SafeguardDeed, 'found'> {
  const { id, key, name, kind, testEveryDays, tests, systemId } = row;
  const off = row.offs.find(({ since, until, backAt }) => since <= day && day <= until && !(backAt && backAt <= when));
  const then = { key, name, kind, testEveryDays, tests, ...(off ? { off: { ...off, by: '' } } : {}) };
  const { state, last } = standingOf(then, day);
  return { id, key, name, kind, isOfSite: systemId === null, state, last, why: off?.why ?? null };
}
