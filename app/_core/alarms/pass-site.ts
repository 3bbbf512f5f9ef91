import { type Around, type Condition, NOTHING_AROUND, sensorsOf } from './condition';
import { groupBy } from '../group-by';
import { isLate } from '../readings/late';
import { bereave, excuse, hold, pass, type Seen, type Turn, type Watch } from './is-true';

/** An alarm, and where it stands. */
export interface Watched {
  /** Its id. */
  alarm: string;
  condition: Condition;
  watch: Watch;
}

/** A reading, and of which sensor. */
export interface SeenOf extends Seen {
  sensor: string;
}

/** Somebody said that nothing more comes from these sensors: the gateway they hang on is gone. */
export interface Gone {
  sensors: readonly string[];
  cameMs: number;
}

/** What became of the alarms of a site. */
export interface Passed {
  /** Those that stand elsewhere now. */
  changed: Watched[];
  /** In the order in which they came about for each alarm. */
  turns: { alarm: string; turn: Turn }[];
}

/** Age, ms, from which a reading that only now came is for the record and calls nobody. Common practice, no source. */
const FOR_THE_RECORD_MS = 86_400_000;

/**
 * Holds the alarms of a site to what came, and lets the clock pass to the present.
 *
 * @param watched   its alarms
 * @param seen      readings that came, in any order
 * @param nowMs     the present, ms since 1970
 * @param wasAway   whether nobody listened for a while: silence is counted anew then
 * @param around    what else is so at the site
 * @param gone      what was said to be gone, in any order
 */
export function passSite(
  watched: readonly Watched[],
  seen: readonly SeenOf[],
  nowMs: number,
  wasAway: boolean,
  around = NOTHING_AROUND,
  gone: readonly Gone[] = [],
): Passed {
  const bySensor = groupBy(seen, ({ sensor }) => sensor);
  const passed: Passed = { changed: [], turns: [] };
  for (const one of watched) {
    const turns: Turn[] = [];
    const watch = passOne(one, readingsFor(one.condition, bySensor), { nowMs, wasAway, around, gone }, turns);
    if (!isSame(watch, one.watch)) passed.changed.push({ ...one, watch });
    passed.turns.push(...turns.map((turn) => ({ alarm: one.alarm, turn })));
  }
  return passed;
}

function passOne(
  { condition, watch: before }: Watched,
  seen: readonly SeenOf[],
  { nowMs, wasAway, around, gone }: { nowMs: number; wasAway: boolean; around: Around; gone: readonly Gone[] },
  turns: Turn[],
): Watch {
  let watch = before;
  const go = (step: { watch: Watch; turn: Turn | null }) => {
    watch = step.watch;
    if (step.turn) turns.push(step.turn);
  };
  for (const one of seen) {
    for (const step of hold(condition, watch, one, around)) go(step);
    confirm(turns, watch, one);
  }
  if (wasAway) watch = excuse(condition, watch, nowMs);
  // After the excuse: that something is gone was said, whoever listened meanwhile.
  for (const { sensors, cameMs } of gone) watch = bereave(condition, watch, new Set(sensors), cameMs);
  const passed = pass(condition, watch, nowMs, around);
  const byLate = seen.some((one) => one.atMs === watch.lastMs && isLate(one.atMs, one.cameMs));
  const isRaisedLate = passed.turn?.kind === 'raised' && condition.kind !== 'silence' && byLate;
  go(isRaisedLate && passed.turn ? { ...passed, turn: { ...passed.turn, isLate: true } } : passed);
  return watch;
}

/** What came in time and leaves an alarm active says that it is so now, whatever it was raised by. */
function confirm(turns: Turn[], { phase, lastMs }: Watch, { atMs, cameMs }: SeenOf): void {
  const last = turns.at(-1);
  if (last?.isLate !== true || phase !== 'active' || lastMs !== atMs || isLate(atMs, cameMs)) return;
  const { isLate: _was, ...now } = last;
  turns[turns.length - 1] = now;
}

/** The readings an alarm is held to, in the order of the clock it goes by. */
function readingsFor(condition: Condition, bySensor: ReadonlyMap<string, readonly SeenOf[]>): SeenOf[] {
  const all = sensorsOf(condition).flatMap((sensor) => bySensor.get(sensor) ?? []);
  if (condition.kind === 'silence') return all.sort((a, b) => a.cameMs - b.cameMs);
  return all.filter(({ atMs, cameMs }) => cameMs - atMs <= FOR_THE_RECORD_MS).sort((a, b) => a.atMs - b.atMs);
}

function isSame(a: Watch, b: Watch): boolean {
  return (
    a.phase === b.phase &&
    a.sinceMs === b.sinceMs &&
    a.dueMs === b.dueMs &&
    a.lastMs === b.lastMs &&
    a.lastValue === b.lastValue &&
    a.memory === b.memory
  );
}
