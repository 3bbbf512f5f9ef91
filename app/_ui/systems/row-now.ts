import type { Tonight } from '#core/review/tonight';
import type { Begun } from '#core/states/state-end';
import { hourWords } from '#core/review/words';
import { stateName } from '../states/state-view';
import { lasting } from '../words/lasting';
import { momentSaid, timeSaid } from '../words/moment';
import { spareSaid } from '../words/said';

/** How a system stands now, as a list of systems speaks of it. Instants are UTC, ISO. */
export interface ListedNow {
  tonight: Tonight | null;
  isTonightKnown: boolean;
  alarms: { unacknowledged: number; active: number; suppressed: number };
  checks: { late: number; missed: number };
  safeguards: { all: number; untested: number; off: number };
  states: { state: Begun; until: string; outstayed: boolean }[];
  last: { at: string; isStale: boolean; silent: number; devices: number } | null;
}

/** Something that stands open at a system. */
interface OpenThing {
  says: string;
  /** Whether it is abnormal: a mark and weight beside the words. */
  isAbnormal: boolean;
  /** The page of the site that shows it. */
  on?: 'alarms' | 'rounds' | 'states';
}

/** How a system stands now, in words. */
export interface RowNow {
  /** Time to spare from now to the morning. */
  tonight: { says: string; isShort: boolean };
  /** Less is shorter: nobody comes, then the least, then where nothing is harmed. */
  tonightOrder: number;
  open: OpenThing[];
  /** What to say where nothing is. */
  nothing: string;
  /** More wants more: alarms that nobody has acknowledged, then those active, outstayed states, missed and late rounds. */
  weight: number;
  safeguards: string;
  reading: OpenThing;
}

/** Places of the weight: each kind of thing counts before all of the next. */
const BEFORE = 100;

/**
 * How a system stands, in words.
 *
 * @param at      the instant, UTC, ISO
 * @param zone    of the site
 * @param above   overdue rounds that stand above the table, for every system, and not in its row
 */
export function rowNow(now: ListedNow, at: string, zone: string, above: ListedNow['checks']): RowNow {
  const { alarms, checks, states } = now;
  const late = states.filter(({ outstayed }) => outstayed);
  const counts = [alarms.unacknowledged, alarms.active, late.length, checks.missed, checks.late];
  return {
    tonight: tonightSaid(now),
    tonightOrder: now.tonight ? (now.tonight.spareS ?? -Number.MAX_VALUE) : Number.MAX_VALUE,
    open: [
      ...counted(alarms.unacknowledged, 'alarm', 'not acknowledged'),
      ...counted(alarms.active, 'alarm', 'acknowledged, still active or to be reset'),
      ...overdueSaid({ late: checks.late - above.late, missed: checks.missed - above.missed }),
      ...counted(alarms.suppressed, 'alarm', 'calling nobody'),
      ...states.map((state) => stateSaid(state, at, zone)),
    ],
    nothing: above.late + above.missed > 0 ? 'nothing else open' : 'nothing open',
    weight: counts.reduce((sum, count) => sum * BEFORE + Math.min(count, BEFORE - 1), 0),
    safeguards: safeguardsSaid(now.safeguards),
    reading: readingSaid(now.last, at),
  };
}

/** Overdue rounds in words: none, missed ones, late ones. */
export function overdueSaid({ late, missed }: ListedNow['checks']): OpenThing[] {
  return [...counted(missed, 'round', 'missed'), ...counted(late, 'round', 'late')];
}

function counted(count: number, noun: 'alarm' | 'round', how: string): OpenThing[] {
  return count === 0
    ? []
    : [{ says: `${count} ${noun}${count === 1 ? '' : 's'} ${how}`, isAbnormal: true, on: `${noun}s` }];
}

function stateSaid({ state, until, outstayed }: ListedNow['states'][number], at: string, zone: string): OpenThing {
  const isNear = Math.abs(Date.parse(until) - Date.parse(at)) < 12 * 3_600_000;
  const when = isNear ? timeSaid(until, zone) : momentSaid(until, zone);
  if (outstayed) return { says: `${stateName(state)} outstayed, was to end ${when}`, isAbnormal: true, on: 'states' };
  return { says: `${stateName(state)} until ${when}`, isAbnormal: false, on: 'states' };
}

function tonightSaid({ tonight, isTonightKnown }: ListedNow): RowNow['tonight'] {
  if (!tonight) return { says: isTonightKnown ? 'nothing harmed' : 'not known yet', isShort: false };
  const { spareS, hour } = tonight;
  const isShort = spareS === null || spareS < 0;
  return { says: isShort ? `${spareSaid(spareS)}, ${hourWords(hour)}` : spareSaid(spareS), isShort };
}

function safeguardsSaid({ all, untested, off }: ListedNow['safeguards']): string {
  if (all === 0) return 'no safeguards';
  const parts = [untested > 0 ? `${untested} of ${all} untested` : `all ${all} tested`, off > 0 ? `${off} off` : ''];
  return `safeguards: ${untested === 0 && off > 0 ? `${off} of ${all} off` : parts.filter(Boolean).join(', ')}`;
}

function readingSaid(last: ListedNow['last'], at: string): OpenThing {
  if (!last) return { says: 'never read', isAbnormal: false };
  const age = (Date.parse(at) - Date.parse(last.at)) / 1000;
  const ago = age < 60 ? 'read just now' : `read ${lasting(age)} ago`;
  if (last.isStale) return { says: `stale: ${ago}`, isAbnormal: true };
  if (last.silent > 0) return { says: `${ago}, ${last.silent} of ${last.devices} sensors silent`, isAbnormal: true };
  return { says: ago, isAbnormal: false };
}
