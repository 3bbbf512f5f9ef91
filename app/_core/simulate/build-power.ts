import type { Limits } from '../alarms/condition';
import type { Meant, MeantBy } from '../alarms/meant';
import type { Equipment } from '../facility/system';
import { endsItself } from '../states/state-end';
import type { Build } from './build';
import { IDLE_SHARE } from './build-device';
import { deviceIndex, gatewaysOf } from './build-ways';
import { signalOf } from './build-signals';
import type { MeantWatch, PowerWatch } from './machine';
import { type Signal, voted } from './signal';
import { type Watch, watch } from './watch';

/**
 * What an alarm on the power of a piece of equipment is held to, as readings of its meter are.
 *
 * @param condition   what readings are held to
 * @param key         the equipment
 * @param index       of the alarm, for its watches
 */
export function powerWatch(build: Build, condition: Limits, key: string, index: number): PowerWatch | null {
  const device = build.resolved.devices[deviceIndex(build, key)];
  if (!device) return null;
  const { equipment, watts } = device;
  const { of } = condition;
  const { minW, maxW } = equipment.wattsRange ?? { minW: watts, maxW: watts };
  // The range is what a healthy one draws, whatever its rated power is at the bad end of what is plausible.
  const whole = (minW + maxW) / 2;
  const showsIdle = minW > IDLE_SHARE * watts;
  const idle = showsIdle ? ((condition.from ?? 0) + minW) / 2 : whole;
  const meant = of?.kind === 'watts' ? meantWatch(build, of.meant, equipment, index) : null;
  return { condition, whole, idle, onlyAmiss: false, meant };
}

/** The same of limits on a meter alone. They are passed whenever it is switched; that it is not as it is told is asked as well. */
export function meterWatch(build: Build, condition: Limits, key: string): PowerWatch | null {
  const device = build.resolved.devices[deviceIndex(build, key)];
  if (!device) return null;
  return { condition, whole: device.watts, idle: IDLE_SHARE * device.watts, onlyAmiss: true, meant: null };
}

function meantWatch(build: Build, meant: Meant, equipment: Equipment, index: number): MeantWatch {
  const { by } = meant;
  const mayDiffer = differs(build, meant, equipment);
  const [mayRun, mayRest] = [mayDiffer && !meant.mayBeHeldOn, mayDiffer && !meant.mayBeHeldOff];
  const asked = { meant, on: null, off: null, ways: [], said: null, state: toldState(build), mayRun, mayRest };
  if (by?.kind !== 'readings' || !mayDiffer) return asked;
  const sensors = by.sensors.map((id) => id.slice(meant.system.length + 1));
  const signals = sensors.map((key) => signalOf(build.system, key, build.plant, build.places, build.upset));
  // One that says nothing leaves all of them without an answer.
  if (signals.length === 0 || signals.some(({ kind }) => kind === 'lost')) return asked;
  const signal = voted(signals, by.vote);
  const ways = sensors.flatMap((key) => gatewaysOf(build, build.system.sensors.find((s) => s.key === key)?.gateway));
  const [on, off] = beyond(by, signal, index);
  build.watches.push(...(mayRest ? [on] : []), ...(mayRun ? [off] : []));
  return { ...asked, ways, on: mayRest ? on : null, off: mayRun ? off : null };
}

/** How near a value that sits on a threshold must come back to have left it, in the signal's unit. */
const SLACK = 1e-6;

function beyond(by: Extract<MeantBy, { kind: 'readings' }>, signal: Signal, index: number): [on: Watch, off: Watch] {
  const sign = by.offAt > by.onAt ? 1 : -1;
  return [
    watch('alarm', index, signal, sign === 1 ? -1 : 1, by.onAt, by.onAt + sign * SLACK),
    watch('alarm', index, signal, sign, by.offAt, by.offAt - sign * SLACK),
  ];
}

/**
 * Whether anything that is wrong may have it run other than it seems to be meant to. Where nothing has, it follows its plan,
 * and is clearly beyond a set-point only after it has been switched there.
 */
function differs(build: Build, { by, system }: Meant, { key, circuit }: Equipment): boolean {
  const { upset } = build;
  if (by?.kind === 'always' || (by?.kind === 'hours' && upset.clockOffS !== 0)) return true;
  const isMisled = by?.kind === 'readings' && by.sensors.some((id) => upset.probes.has(id.slice(system.length + 1)));
  const isSupplied = build.supply(circuit).every(({ live }) => live);
  return isMisled || !isSupplied || upset.health.has(key) || upset.setPointShift.has(key) || upset.noRestart.has(key);
}

/** The state that the run begins in, where people say that it is in force: one that a device begins and ends nobody says. */
function toldState({ state, system }: Build): MeantWatch['state'] {
  return state === 'normal' || endsItself(system, state) ? null : state;
}
