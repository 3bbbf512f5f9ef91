import 'server-only';
import type { System } from '#core/facility/system';
import { standingOf } from '#core/plans/due';
import { isStale } from '#core/readings/age';
import type { ReviewSummary } from '#core/review/summary';
import { leastIn, type Tonight } from '#core/review/tonight';
import type { Overdue } from '#core/rounds/standings';
import type { Begun } from '#core/states/state-end';
import type { LastRead, OpenAlarms } from '#data/overview/system-facts';
import type { StateRun } from '#data/states/states';

/** How a system stands at a moment, in plain values. Instants are ISO 8601 in UTC. */
export interface SystemNow {
  /** Least time to spare of the worst case from now to the morning; null where nothing is harmed, or it is not known yet. */
  tonight: Tonight | null;
  /** Whether a review says so. */
  isTonightKnown: boolean;
  alarms: { unacknowledged: number; active: number; suppressed: number };
  /** Rounds that are late, and that were missed within a day. */
  checks: Overdue;
  safeguards: { all: number; untested: number; off: number };
  states: { state: Begun; until: string; outstayed: boolean }[];
  /** Null when nothing was ever read. */
  last: { at: string; isStale: boolean; silent: number; devices: number } | null;
}

/** What is known of the systems of a site, by system. */
export interface KnownNow {
  at: Date;
  /** ISO date at the site. */
  today: string;
  /** Hours of the week from now to the morning. */
  hours: readonly number[];
  alarms: ReadonlyMap<string, OpenAlarms>;
  reads: ReadonlyMap<string, LastRead>;
  /** By key of the system. */
  rounds: ReadonlyMap<string, Overdue>;
  states: readonly StateRun[];
}

/** How a system stands, out of what was asked for all of them at once. @param systemId its id */
export function systemNow(
  known: KnownNow,
  system: Pick<System, 'key' | 'safeguards'>,
  systemId: string,
  summary: ReviewSummary | null,
): SystemNow {
  const alarms = known.alarms.get(systemId);
  const standings = system.safeguards.map((safeguard) => standingOf(safeguard, known.today).state);
  const count = (state: 'untested' | 'off') => standings.filter((one) => one === state).length;
  return {
    tonight: summary?.spareHours ? leastIn(summary.spareHours, known.hours) : null,
    isTonightKnown: summary !== null && (summary.spareHours !== undefined || isHarmless(summary)),
    alarms: {
      unacknowledged: alarms?.unacknowledged ?? 0,
      active: alarms?.active ?? 0,
      suppressed: alarms?.suppressed ?? 0,
    },
    checks: known.rounds.get(system.key) ?? { late: 0, missed: 0 },
    safeguards: { all: standings.length, untested: count('untested'), off: count('off') },
    states: known.states
      .filter((run) => run.system.id === systemId && !run.isOver)
      .map(({ state, until, outstayed }) => ({ state, until: until.toISOString(), outstayed })),
    last: lastOf(known.reads.get(systemId), known.at),
  };
}

/**
 * Whether nothing is harmed. It has no hours then; what is not assessed has none either, nor has a review that was kept before
 * they were, and neither of them is harmless.
 */
function isHarmless({ worst: { claimed } }: ReviewSummary): boolean {
  return claimed.harm === null && claimed.verdict !== 'not-assessed';
}

function lastOf(read: LastRead | undefined, at: Date): SystemNow['last'] {
  if (!read) return null;
  const { silent, devices } = read;
  const age = at.getTime() - read.at.getTime();
  return { at: read.at.toISOString(), isStale: isStale(read.origin, age), silent, devices };
}
