import 'server-only';
import { z } from 'zod';
import { byDue, type Standing, standingOf } from '#core/plans/due';
import type { Safeguard } from '#core/plans/safeguard';
import { ok, type Result } from '#core/result';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { findStoredSite } from '../reviews/find-stored-site';

/** One safeguard of a site and how it stands today. */
export interface SafeguardLine extends Standing {
  /** The system it belongs to; null for one of the site itself. */
  system: { key: string; name: string } | null;
  key: string;
  name: string;
  kind: Safeguard['kind'];
  testEveryDays: number;
  off: Safeguard['off'] | null;
}

/** Every safeguard of a site. */
export interface SafeguardCalendar {
  site: { key: string; name: string };
  /** ISO date at the site. */
  today: string;
  lines: SafeguardLine[];
}

export const listSafeguardsShape = z.object({ site: z.string() });

/** The safeguards of a site and of its systems, what has to be tested first. */
export async function listSafeguards(
  who: Who,
  { site: key }: z.output<typeof listSafeguardsShape>,
): Promise<Result<SafeguardCalendar, Refusal>> {
  const found = await findStoredSite(who, 'see', key);
  if (!found.ok) return found;
  const { entry: site, stored, today } = found.value;
  const { safeguards, systems } = stored.reviewed;
  const lines = [
    ...safeguards.map((one) => lineOf(null, one, today)),
    ...systems.flatMap((system) =>
      system.safeguards.map((one) => lineOf({ key: system.key, name: system.name }, one, today)),
    ),
  ];
  return ok({ site: { key: site.key, name: site.name }, today, lines: lines.sort(byDue) });
}

/** A safeguard as one line of the calendar. @param today ISO date at the site */
export function lineOf(system: SafeguardLine['system'], safeguard: Safeguard, today: string): SafeguardLine {
  const { key, name, kind, testEveryDays, off = null } = safeguard;
  return { system, key, name, kind, testEveryDays, off, ...standingOf(safeguard, today) };
}
