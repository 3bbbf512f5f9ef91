import type { Watch } from './watch';
import { past } from './watch-table';
import type { World } from './world';

const DAY = 86_400;

/** Drift is carried forward half as fast again as it was seen, and a tenth of the distance is kept in hand. */
const HASTE = 1.5;
const RESERVE = 0.1;

/**
 * How near each watch that matters came to its threshold in this window and in the one before. Windows are whole days
 * where anything follows the time of day, else half days.
 */
export interface Drift {
  windowS: number;
  /** Rows of the watches that matter. */
  rows: number[];
  /** Their gauges, each once, and the least and most these read in this window. */
  gauges: number[];
  least: Float64Array;
  most: Float64Array;
  /** How near each watch came in the window before. */
  before: Float64Array;
  /** What has changed for good so far, and the number of the window in which it last did. */
  turned: number;
  turnedIn: number;
}

const MATTERS: ReadonlySet<Watch['role']> = new Set<Watch['role']>([
  'limit',
  'cut-out',
  'interlock',
  'dry',
  'empty',
  'rim',
  'flood',
  'floor',
]);

/**
 * Begin to follow the drift of a run.
 * @param isAsked whether it will be asked where the drift leads; else nothing is followed
 */
export function driftOf(world: World, isAsked: boolean): Drift {
  const matters = (w: Watch) =>
    isAsked && MATTERS.has(w.role) && w.signal.kind !== 'lost' && w.signal.kind !== 'constant';
  const rows = world.table.watches.map((w, i) => (matters(w) ? i : -1)).filter((i) => i >= 0);
  const gauges = [...new Set(rows.map((row) => world.table.gaugeOf[row] as number))];
  const { room, devices } = world.machine;
  const byTheDay = !room.steady || devices.some((d) => d.regulated.kind === 'hours');
  return {
    windowS: byTheDay ? DAY : DAY / 2,
    rows,
    gauges,
    least: new Float64Array(world.table.gauges.count).fill(Number.POSITIVE_INFINITY),
    most: new Float64Array(world.table.gauges.count).fill(Number.NEGATIVE_INFINITY),
    before: new Float64Array(rows.length).fill(Number.NEGATIVE_INFINITY),
    turned: 0,
    turnedIn: 0,
  };
}

/** Take note of an accepted step; the gauges have been looked at there. */
export function followDrift({ gauges, least, most }: Drift, world: World): void {
  const { from } = world.table.gauges;
  for (let i = 0; i < gauges.length; i++) {
    const g = gauges[i] as number;
    const reading = from[g] as number;
    if (reading < (least[g] as number)) least[g] = reading;
    if (reading > (most[g] as number)) most[g] = reading;
  }
}

/**
 * Whether nothing can happen any more before `untilS`: asked at the end of each window from the second on. What came nearer
 * to a threshold in this window than in the last is taken to go on doing so, half as fast again, to the end; if that reaches
 * none, no limit is being exceeded and no turning point lies ahead, the rest of the run would tell nothing new. After something
 * has changed for good (a reservoir emptied, a cut-out opened until reset) two whole windows are needed to see where it leads.
 */
export function nothingLeftToHappen(drift: Drift, world: World, untilS: number): boolean {
  const windows = Math.round(world.t / drift.windowS);
  if (windows < 1 || Math.abs(world.t - windows * drift.windowS) > 1e-3) return false;
  const left = (untilS - world.t) / drift.windowS;
  const turned = changedForGood(drift, world);
  if (turned !== drift.turned) {
    drift.turned = turned;
    drift.turnedIn = windows;
  }
  const nearest = drift.rows.map((row) => nearestIn(drift, world, row));
  const over =
    windows >= drift.turnedIn + 2 &&
    quiet(world) &&
    drift.rows.every((row, i) => leadsNowhere(drift, world.table.watches[row] as Watch, i, nearest, left));
  drift.before.set(nearest);
  drift.least.fill(Number.POSITIVE_INFINITY);
  drift.most.fill(Number.NEGATIVE_INFINITY);
  return over;
}

/** How near a watch came to its threshold in this window: below 0 by as much as was left. */
function nearestIn({ least, most }: Drift, { table }: World, row: number): number {
  const g = table.gaugeOf[row] as number;
  return past(table, row, (table.a[row] as number) > 0 ? (most[g] as number) : (least[g] as number));
}

/** How much has changed that nothing but a person changes back. */
function changedForGood(drift: Drift, world: World): number {
  const { machine, table } = world;
  const watches = drift.rows.filter((row) => {
    const w = table.watches[row] as Watch;
    // A reservoir that people go on filling is not empty for good.
    return w.active && (w.role === 'dry' || (w.role === 'empty' ? !machine.refilled : w.latched));
  });
  return watches.length + machine.devices.filter((d) => d.lockedOut || d.dry).length;
}

function quiet(world: World): boolean {
  return (
    world.exposures.length === 0 &&
    world.beyondDay.every((since) => since === null) &&
    !world.timers.some((timer) => timer.turning && timer.live())
  );
}

function leadsNowhere(drift: Drift, w: Watch, i: number, nearest: number[], windowsLeft: number): boolean {
  if (w.active) return true;
  const now = nearest[i] as number;
  const nearer = Math.max(0, now - (drift.before[i] as number));
  return now * (1 - RESERVE) + HASTE * nearer * windowsLeft < 0;
}
