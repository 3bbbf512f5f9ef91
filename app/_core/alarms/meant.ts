import type { Vote } from '../plans/plan';
import { DAY } from '../time/week';
import type { Around } from './condition';
import { inForceAt } from './spells';

/** When a piece of equipment is meant to run and when it is not, as far as its plan and readings can tell. */
export interface Meant {
  system: string;
  /** What operating states ask of it; a cell that says off wins over one that says on. */
  states: readonly { state: string; then: 'on' | 'off' }[];
  /** Regulation: all the time; between two local times, s of the day; by readings; null: not to be told. */
  by: MeantBy | null;
  /** Whether a cut-out or interlock may hold it off, so that nothing may be told from its drawing nothing. */
  mayBeHeldOff: boolean;
  /** Whether an interlock may have it run. */
  mayBeHeldOn: boolean;
  /** Longest s that it goes on as it was after regulation turned: its shortest times. */
  lagS: number;
}

export type MeantBy =
  | { kind: 'always'; sensors: readonly string[] }
  | { kind: 'hours'; fromS: number; toS: number; sensors: readonly string[] }
  /** Two-point control: on at one value, off at the other; `system/key` of the sensors it votes over. */
  | { kind: 'readings'; sensors: readonly string[]; vote: Vote; onAt: number; offAt: number };

/** The newest usable reading of a sensor: when, ms since 1970, and its value. */
export type Newest = readonly [atMs: number, value: number];

/** s for which it must be clear whether equipment is meant to run: its controller and its meter take their time. Common practice, no source. */
const SETTLE_S = 60;

/** s for which it must have been meant to run, or not to, before that is held against what it draws. */
export function settlesAfterS({ lagS }: Meant): number {
  return SETTLE_S + lagS;
}

/** Age, ms, up to which a reading says how regulation stands. Common practice, no source. */
const FRESH_MS = 15 * 60_000;

/**
 * Whether a piece of equipment is meant to run at an instant.
 *
 * @param newest   newest readings by sensor
 * @returns        null when nobody can tell: between its two set-points, by hand, under an interlock
 */
export function meantAt(
  meant: Meant,
  newest: Readonly<Record<string, Newest>>,
  atMs: number,
  around: Around,
): 'on' | 'off' | null {
  const asked = askedByStates(meant, atMs, around) ?? askedByRegulation(meant, newest, atMs, around);
  if (asked === 'on') return meant.mayBeHeldOff ? null : 'on';
  return asked === 'off' && meant.mayBeHeldOn ? null : asked;
}

function askedByStates({ system, states }: Meant, atMs: number, { spells }: Around): 'on' | 'off' | null {
  if (states.length === 0) return null;
  const inForce = inForceAt(spells, system, atMs);
  const said = states.filter(({ state }) => inForce.has(state)).map(({ then }) => then);
  if (said.includes('off')) return 'off';
  return said.includes('on') ? 'on' : null;
}

function askedByRegulation(
  { by }: Meant,
  newest: Readonly<Record<string, Newest>>,
  atMs: number,
  { daySecond }: Around,
): 'on' | 'off' | null {
  switch (by?.kind) {
    case undefined:
      return null;
    case 'always':
      return 'on';
    case 'hours': {
      const now = daySecond(atMs) % DAY;
      const { fromS, toS } = by;
      const isInside = fromS < toS ? now >= fromS && now < toS : now >= fromS || now < toS;
      return isInside ? 'on' : 'off';
    }
    case 'readings':
      return askedByReadings(by, newest, atMs);
  }
}

function askedByReadings(
  { sensors, vote, onAt, offAt }: Extract<MeantBy, { kind: 'readings' }>,
  newest: Readonly<Record<string, Newest>>,
  atMs: number,
): 'on' | 'off' | null {
  const values = sensors.flatMap((sensor) => {
    const one = newest[sensor];
    return one && atMs - one[0] <= FRESH_MS ? [one[1]] : [];
  });
  if (values.length < sensors.length || values.length === 0) return null;
  const value = decided(values, vote);
  const isRising = offAt > onAt;
  if (isRising ? value >= offAt : value <= offAt) return 'off';
  return (isRising ? value <= onAt : value >= onAt) ? 'on' : null;
}

function decided(values: readonly number[], vote: Vote): number {
  const sorted = [...values].sort((a, b) => a - b);
  const last = sorted.length - 1;
  if (vote === 'highest') return sorted[last] as number;
  if (vote === 'lowest' || vote === 'single') return sorted[0] as number;
  return ((sorted[Math.floor(last / 2)] as number) + (sorted[Math.ceil(last / 2)] as number)) / 2;
}
