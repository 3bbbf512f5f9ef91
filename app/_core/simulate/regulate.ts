import type { Device } from './device';
import type { World } from './world';

const DAY = 86_400;

/** s: a wake-up that lands this close to its time has come; rounding alone would send it back to sleep for ever. */
const GRACE = 1e-6;

/**
 * Let each device's own regulation answer for this instant, within its shortest times and longest run.
 * @returns whether any answer changed
 */
export function regulate(world: World): boolean {
  let changed = false;
  for (const [i, device] of world.machine.devices.entries()) {
    const before = device.on;
    answer(world, device);
    if (device.on !== before) {
      changed = true;
      started(world, device, i);
    }
  }
  return changed;
}

function answer(world: World, device: Device): void {
  const { regulated } = device;
  switch (regulated.kind) {
    case 'always':
      device.on = true;
      return;
    case 'never':
      device.on = false;
      return;
    case 'hours':
      device.on = within(world, device);
      return;
    case 'watch': {
      const control = regulated.watch;
      if (!control || control.signal.kind === 'lost' || control.active === device.on) return;
      const rest = (device.on ? regulated.minOnS : regulated.minOffS) - (world.t - device.switchedS);
      if (rest > GRACE) {
        wakeAt(world, world.t + rest);
        return;
      }
      device.on = control.active;
    }
  }
}

function within(world: World, device: Device): boolean {
  const { fromS, toS } = device.regulated;
  const now = secondsOfDay(world);
  const inside = fromS < toS ? now >= fromS && now < toS : now >= fromS || now < toS;
  const next = [fromS, toS].map((s) => (s - now + DAY) % DAY || DAY);
  wakeAt(world, world.t + Math.min(...next));
  return inside;
}

/** Time of day by the clock that runs timed equipment, s; rounded to the microsecond so that a landing on a switching time counts as reached. */
function secondsOfDay(world: World): number {
  const off = world.stepper.clockS + world.machine.clockOffS + world.t;
  return (((Math.round(off * 1e6) / 1e6) % DAY) + DAY) % DAY;
}

/** Have every alarm and regulation asked again at a time, s of the run. */
export function wakeAt(world: World, atS: number): void {
  // Another kind of timer at the same time does not do: it may lose its meaning before it is due.
  if (world.timers.some((timer) => timer.wakes && Math.abs(timer.atS - atS) < 1e-6)) return;
  world.timers.push({ atS, live: () => true, fire: () => undefined, turning: false, wakes: true });
}

function started(world: World, device: Device, index: number): void {
  device.switchedS = world.t;
  world.record.switches.push({ t: world.t, device: index, on: device.on });
  if (device.on) limitRun(world, device);
}

/** Begin to count the longest run of a device that has just been told to run, or is found running. */
export function limitRun(world: World, device: Device): void {
  const { runLimitS, runLimitSafeguard } = device.regulated;
  if (runLimitS === Number.POSITIVE_INFINITY) return;
  const since = device.switchedS;
  world.timers.push({
    atS: world.t + runLimitS,
    live: () => device.on && device.switchedS === since && !device.lockedOut,
    fire: () => {
      device.lockedOut = true;
      if (runLimitSafeguard) world.record.acted.add(runLimitSafeguard);
      world.record.events.push({ t: world.t, what: `${device.key}: run limit reached, locked out` });
    },
    turning: false,
  });
}
