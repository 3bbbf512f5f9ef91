import 'server-only';
import type { Facility } from '#core/facility/facility';
import type { Begun } from '#core/states/state-end';
import { nextLookMs, watchedUntil, watchesAfter } from '#core/states/watch';
import { accountNames } from '#data/accounts/names';
import { newId } from '#data/new-id';
import { endedSince } from '#data/states/watched';
import { rotaOf } from '../rota/rota-of';

/** What is watched after a state, in plain values; instants are ISO 8601 in UTC. */
export interface WatchLine {
  run: string;
  system: { key: string; name: string };
  state: Begun;
  endedAt: string;
  title: string;
  look: string;
  source: string;
  until: string;
  /** When a look is due; null when none is any more. */
  nextLook: string | null;
  isLate: boolean;
  /** Those that were taken back among them, which count no longer. */
  looks: {
    id: string;
    at: string;
    by: string;
    note: string | null;
    taken: { at: string; by: string; reason: string } | null;
  }[];
  /** Id for the next look. */
  entry: string;
}

/** No watch is longer, ms: a week, and the two shifts after it. */
const LONGEST_MS = 10 * 86_400_000;

/** What of a site is watched after states that ended, what is due first. It is derived from what happened, so that nothing has to run for it. */
export async function watchLines(siteId: string, facility: Facility, at: Date): Promise<WatchLine[]> {
  const now = at.getTime();
  const ended = await endedSince(siteId, new Date(now - LONGEST_MS));
  const rota = await rotaOf(siteId, facility, now - LONGEST_MS);
  const names = await accountNames(
    ended.flatMap(({ looks }) => looks.flatMap(({ by, taken }) => (taken ? [by, taken.by] : [by]))),
  );
  const lines = ended.flatMap(({ run, system, state, endedAt, looks }) => {
    const described = facility.systems.find(({ key }) => key === system.key);
    if (!described) return [];
    return watchesAfter(described, state).flatMap((watch): WatchLine[] => {
      const endedMs = endedAt.getTime();
      const untilMs = watchedUntil(rota, watch, endedMs);
      if (untilMs <= now) return [];
      const next = nextLookMs(
        watch,
        untilMs,
        endedMs,
        looks.filter(({ taken }) => taken === null).map((one) => one.at.getTime()),
      );
      const { title, look, source } = watch;
      return [
        {
          ...{ run, state, title, look, source },
          system: { key: system.key, name: system.name },
          endedAt: endedAt.toISOString(),
          until: new Date(untilMs).toISOString(),
          nextLook: next === null ? null : new Date(next).toISOString(),
          isLate: next !== null && next < now,
          looks: looks.map(({ taken, ...one }) => ({
            ...one,
            at: one.at.toISOString(),
            by: names.get(one.by) ?? one.by,
            taken: taken && { ...taken, at: taken.at.toISOString(), by: names.get(taken.by) ?? taken.by },
          })),
          entry: newId(),
        },
      ];
    });
  });
  return lines.sort((a, b) => (a.nextLook ?? a.until).localeCompare(b.nextLook ?? b.until));
}
