import { type Device, phaseAt } from './device';
import type { AlarmWatch } from './machine';
import { returnLost } from './mode';
import { retire } from './watch-table';
import type { World } from './world';

/** Follow every alarm that has not been raised yet: begin its delay, drop it, or raise it if its message can travel. */
export function raiseAlarms(world: World): void {
  for (const [i, alarm] of world.machine.alarms.entries()) {
    if (alarm.followed || world.record.alarms.has(alarm.key)) continue;
    if (!holds(world, alarm)) {
      world.pending[i] = null;
      continue;
    }
    const since = world.pending[i] ?? world.t;
    if (world.pending[i] === null) {
      world.pending[i] = since;
      if (alarm.delayS > 0) wake(world, i, since, alarm.delayS);
    }
    // A microsecond's grace, so that landing on the timer counts as having waited.
    if (world.t - since < alarm.delayS - 1e-6) continue;
    if (!alarm.path.every((phases) => phaseAt(phases, world.t).live)) continue;
    world.record.alarms.set(alarm.key, world.t);
    // Raised once is raised: what it compares is not looked at again.
    for (const w of alarm.watches) retire(world.table, w);
  }
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
  return alarm.runs ? device.drawing : abnormal(device);
}

/** Whether the state that the run began in has not ended yet. */
function isInForce({ machine: { span }, t }: World): boolean {
  return span !== null && t < span.endsS - 1e-6;
}

/** Draws while told not to, does not while told to, or outside its watts range for want of water to move. */
function abnormal(device: Device): boolean {
  if (device.command !== device.drawing) return true;
  return device.drawing && device.ranged && (device.dry || device.health === 'no-effect');
}
