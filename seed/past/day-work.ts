import type { StateName, System } from '#core/facility/system';
import { instantOf } from '#core/time/zone';
import type { Turn } from './course';
import type { Random } from './random';
import type { LocalDay } from './span';

const MINUTE_MS = 60_000;

/** A state that somebody put a system into by hand and ended again. */
export interface HandState {
  system: string;
  state: Exclude<StateName, 'normal'>;
  fromMs: number;
  /** When it was meant to end, and when it was ended; null while it is in force. */
  untilMs: number;
  endedMs: number | null;
}

/** What is done with a system from day to day: when it is fed, and which states it is put into. */
export interface DayWork {
  fedMs: number[];
  turns: Turn[];
  states: HandState[];
}

/**
 * The usual work of some days: two meals, a water change or a backwash now and then. Nothing of it is done at the same
 * minute twice.
 *
 * @param except   tells whether something else befalls the system at a moment, so that no usual work is done
 */
export function dayWork(
  zone: string,
  system: System,
  days: readonly LocalDay[],
  random: Random,
  except: (atMs: number) => boolean,
): DayWork {
  const work: DayWork = { fedMs: [], turns: [], states: [] };
  const has = (name: StateName) => system.states.find((state) => state.name === name);
  const [changed, washed] = [random.whole(0, 6), random.whole(0, 3)];
  for (const [i, { date }] of days.entries()) {
    const at = (time: string, within: number) =>
      instantOf(zone, date, time) + Math.round(random.between(-within, within)) * MINUTE_MS;
    for (const fedMs of [at('10:20', 25), at('15:20', 25)]) {
      if (except(fedMs)) continue;
      work.fedMs.push(fedMs);
      if (has('feeding')) pause(work, system, 'feeding', fedMs);
    }
    const works = [
      ['water-change', at('11:45', 15), i % 7 === changed],
      ['backwash', at('12:40', 15), i % 4 === washed],
    ] as const;
    for (const [state, atMs, isDue] of works)
      if (isDue && has(state) && !except(atMs)) pause(work, system, state, atMs);
  }
  work.turns.sort((a, b) => a.atMs - b.atMs);
  return work;
}

/** Puts a system into a state for as long as its plan says; one that a person ends is kept as such. */
function pause(work: DayWork, system: System, state: HandState['state'], fromMs: number): void {
  const described = system.states.find(({ name }) => name === state);
  const untilMs = fromMs + (described?.lastsMin?.value ?? 15) * MINUTE_MS;
  if (described?.endsBy !== 'person') {
    work.turns.push({ atMs: fromMs, state });
    return;
  }
  work.turns.push({ atMs: fromMs, state, holds: true }, { atMs: untilMs, state: 'normal', filled: true });
  work.states.push({ system: system.key, state, fromMs, untilMs, endedMs: untilMs });
}
