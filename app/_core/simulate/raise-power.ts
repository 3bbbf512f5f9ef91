import type { Around, StateSpell } from '../alarms/condition';
import { meantAt, type Newest, settlesAfterS } from '../alarms/meant';
import { lastTurnBefore } from '../alarms/spells';
import { sideOf, wattsSideOf } from '../alarms/side';
import { type Device, isLive } from './device';
import type { AlarmWatch, MeantWatch, PowerWatch } from './machine';
import { wakeAt } from './regulate';
import { retire } from './watch-table';
import type { World } from './world';

const DAY = 86_400;
/** s of grace, so that landing on a time counts as having reached it. */
const GRACE = 1e-6;

/**
 * Whether what a device draws is beyond what an alarm allows it at this instant, by the same rule as readings of its meter:
 * whether it is meant to run is known by plan, states and regulating readings alone, and only once that has been clear for a
 * while. Between two set-points only its watts range counts.
 */
export function drawsAmiss(world: World, power: PowerWatch, device: Device): boolean {
  const { condition, meant } = power;
  const isIdle = device.dry || device.health === 'no-effect';
  const value = !device.drawing ? 0 : isIdle ? power.idle : power.whole;
  if (meant === null) {
    const isAmiss = !power.onlyAmiss || device.command !== device.drawing || (device.drawing && isIdle);
    return isAmiss && sideOf(condition, value) === 'beyond';
  }
  const said = readingsSay(world, meant);
  if (wattsSideOf(condition, null, value) === 'beyond') return true;
  if (!(device.drawing ? meant.mayRun : meant.mayRest)) return false;
  return isMeantOtherwise(world, power, meant, { said, value });
}

/** What the regulating readings say, kept since when. */
function readingsSay({ t }: World, meant: MeantWatch): 'on' | 'off' | null {
  const isHeard = isLive(meant.ways, t);
  const is = isHeard && meant.on?.active ? 'on' : isHeard && meant.off?.active ? 'off' : null;
  if (meant.said?.is !== is) meant.said = { is, sinceS: t };
  return is;
}

function isMeantOtherwise(
  world: World,
  { condition }: PowerWatch,
  { meant, said, state }: MeantWatch,
  { said: saidNow, value }: { said: 'on' | 'off' | null; value: number },
): boolean {
  const atMs = Math.round(world.t * 1e6) / 1e3;
  const spells = spellsOf(world, meant.system, state);
  const around: Around = { spells, daySecond: (ms) => dayOf(world) + (ms - atMs) / 1000 };
  const is = meantAt(meant, standIns(meant.by, saidNow, atMs), atMs, around);
  const hours = meant.by?.kind === 'hours' ? meant.by : null;
  // The clock that switches it may be wrong; the one that it is judged by is not.
  if (hours) wakeAt(world, world.t + Math.min(...[hours.fromS, hours.toS].map((s) => untilS(dayOf(world), s))));
  if (is === null || wattsSideOf(condition, is, value) !== 'beyond') return false;
  const turnS = spells.length === 0 ? -Infinity : lastTurnBefore(spells, meant.system, atMs) / 1000;
  const bySaid = meant.by?.kind === 'readings' ? (said?.sinceS ?? 0) : -Infinity;
  const byHours = hours
    ? world.t - Math.min(...[hours.fromS, hours.toS].map((s) => sinceS(dayOf(world), s)))
    : -Infinity;
  const settledS = Math.max(turnS, bySaid, byHours) + settlesAfterS(meant);
  if (world.t >= settledS - GRACE) return true;
  wakeAt(world, settledS);
  return false;
}

/** What people say of the state that the run began in. */
function spellsOf({ machine: { span } }: World, system: string, state: MeantWatch['state']): StateSpell[] {
  if (state === null || span === null) return [];
  const toMs = Math.round(span.endsS * 1e6) / 1e3;
  return [{ system, state, fromMs: 0, toMs, untilMs: toMs }];
}

/** Readings that say no more than on which side of the set-points the real ones lie: those sit on a threshold as they pass it. */
function standIns(by: MeantWatch['meant']['by'], said: 'on' | 'off' | null, atMs: number): Record<string, Newest> {
  if (by?.kind !== 'readings') return {};
  const value = said === 'on' ? by.onAt : said === 'off' ? by.offAt : (by.onAt + by.offAt) / 2;
  return Object.fromEntries(by.sensors.map((sensor) => [sensor, [atMs, value] as const]));
}

/** s since local midnight by a clock that is right, to the microsecond. */
function dayOf({ stepper, t }: World): number {
  return (Math.round((stepper.clockS + t) * 1e6) / 1e6) % DAY;
}

function sinceS(now: number, edge: number): number {
  return (now - edge + DAY) % DAY;
}

function untilS(now: number, edge: number): number {
  return (edge - now + DAY) % DAY || DAY;
}

/** Look no more at what an alarm on power compares: all that it could tell is known. */
export function forgetPower({ table }: World, { power }: AlarmWatch): void {
  for (const w of [power?.meant?.on, power?.meant?.off]) if (w) retire(table, w);
}
