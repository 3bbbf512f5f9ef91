import { type Device, isLive, phaseAt } from './device';
import type { AlarmWatch } from './machine';
import { returnLost } from './mode';
import { drawsAmiss, forgetPower } from './raise-power';
import { retire } from './watch-table';
import type { World } from './world';

/**
 * Follow every alarm that has not been raised yet: begin its delay, drop it, or raise it if its message can travel. What nothing
 * is heard of begins no delay and ends none, as where readings stop coming.
 */
export function raiseAlarms(world: World): void {
  for (const [i, alarm] of world.machine.alarms.entries()) {
    if (world.record.alarms.has(alarm.key)) continue;
    if (alarm.followed) {
      if (alarm.followed.kind === 'starts') seeStart(world, alarm, alarm.followed);
      continue;
    }
    if (!goesOn(world, alarm, i)) continue;
    const since = world.pending[i] ?? world.t;
    // A microsecond's grace, so that landing on the timer counts as having waited.
    if (world.t - since < alarm.delayS - 1e-6) continue;
    if (!isLive(alarm.path, world.t)) continue;
    world.record.alarms.set(alarm.key, world.t);
    // Raised once is raised: what it compares is not looked at again.
    for (const w of alarm.watches) retire(world.table, w);
    forgetPower(world, alarm);
  }
}

/** Whether what an alarm watches holds, and since when is kept. Whoever was away begins to count a silence anew. */
function goesOn(world: World, alarm: AlarmWatch, index: number): boolean {
  const isHeard = isLive(alarm.heard, world.t);
  if (!isHeard && !alarm.silent) return world.pending[index] !== null;
  if (!(isHeard && holds(world, alarm))) {
    world.pending[index] = null;
    return false;
  }
  if (world.pending[index] === null) {
    world.pending[index] = world.t;
    if (alarm.delayS > 0) wake(world, index, world.t, alarm.delayS);
  }
  return true;
}

function wake(world: World, index: number, since: number, delayS: number): void {
  world.timers.push({
    atS: since + delayS,
    live: () => world.pending[index] === since,
    fire: () => undefined,
    turning: false,
  });
}

function holds(world: World, alarm: AlarmWatch): boolean {
  if (alarm.watches.length > 0) return alarm.watches.some((w) => w.active);
  if (alarm.silent) return !phaseAt(alarm.silent, world.t).live;
  if (alarm.state) return isInForce(world);
  if (alarm.flow) return returnLost(world.machine.devices).flow;
  const device = world.machine.devices[alarm.device];
  if (device === undefined) return false;
  if (alarm.power) return drawsAmiss(world, alarm.power, device);
  return alarm.runs !== null && device[alarm.runs];
}

/** Whether the state that the run began in has not ended yet. */
function isInForce({ machine: { span }, t }: World): boolean {
  return span !== null && t < span.endsS - 1e-6;
}

type Starts = Extract<AlarmWatch['followed'], { kind: 'starts' }>;

/** Note that a device has begun to run, where that is heard. */
function seeStart({ machine, t }: World, alarm: AlarmWatch, followed: Starts): void {
  const device: Device | undefined = machine.devices[alarm.device];
  if (device === undefined || !isLive(alarm.heard, t)) return;
  const runs = device[followed.by];
  if (runs && followed.runs === false) followed.seen.push(t);
  followed.runs = runs;
}
