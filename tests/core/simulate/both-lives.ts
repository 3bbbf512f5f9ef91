import { type Around, sensorsOf } from '#core/alarms/condition';
import { conditionOf } from '#core/alarms/condition-of';
import { beginWatch, type Watch } from '#core/alarms/is-true';
import { passSite } from '#core/alarms/pass-site';
import { taker } from '#core/equipment/take';
import type { Facility } from '#core/facility/facility';
import type { Sensor, StateName, System } from '#core/facility/system';
import { noUpset, type Upset } from '#core/faults/upset';
import { contextOf } from '#core/review/context';
import { type Blueprint, buildMachine } from '#core/simulate/build-machine';
import { signalOf } from '#core/simulate/build-signals';
import { buildSupply } from '#core/simulate/build-supply';
import { courseOf } from '#core/simulate/course-of';
import { type Device, phaseAt } from '#core/simulate/device';
import type { Machine } from '#core/simulate/machine';
import { run } from '#core/simulate/run';
import type { Record } from '#core/simulate/world';
import { REVIEWED_ON } from '../../_support/build-system';

/** What is to happen to the only system of a site. */
export interface Happens {
  wrong: (upset: Upset) => void;
  hours: number;
  /** Local hour at which it goes wrong. */
  hour?: number;
  state?: StateName;
  /** s between two readings of a sensor. */
  everyS?: number;
}

/** s after the onset at which an alarm is raised: in the review, and by readings of the same course; undefined: never. */
export interface Lives {
  key: string;
  review: number | undefined;
  live: number | undefined;
}

/** s before the onset for which readings of the healthy system come. */
const BEFORE_S = 4 * 3600;
/** s between two of them, but in the last minute. */
const RARELY_S = 30;
/** Part of its rated power that a pump draws in these tests when it moves nothing. */
const IDLE = 0.2;

type Shown = Pick<Device, 'drawing' | 'working'>[];

interface Lived {
  machine: Machine;
  record: Record;
  /** What each device did from a time on, s. */
  shown: { t: number; devices: Shown }[];
}

function lived(blueprint: Blueprint, hour: number, untilS: number): Lived {
  const machine = buildMachine(blueprint);
  const shown: Lived['shown'] = [];
  const halt = ({ t }: { t: number }) => {
    shown.push({ t, devices: machine.devices.map(({ drawing, working }) => ({ drawing, working })) });
    return false;
  };
  const record = run(machine, { untilS, clockS: hour * 3600, stopAt: null, settle: false, halt });
  return { machine, record, shown };
}

/** One course of a system, with every alarm as its review sees it and as readings of every sensor raise it. */
export function bothLives(site: Facility, { wrong, hours, hour = 8, state = 'normal', everyS = 2 }: Happens): Lives[] {
  const [system] = site.systems;
  if (!system) throw new Error('the site of a test has a system');
  const context = contextOf(site, system, REVIEWED_ON);
  const view = context.view('nominal');
  const blueprint = (upset: Upset): Blueprint => ({
    ...{ facility: site, system, resolved: view.resolved, upset, credited: context.credit.claimed, state },
    profileOf: view.profileOf,
    snapshot: view.nominal.at(hour),
  });
  const upset = noUpset();
  wrong(upset);
  const fromH = (hour + 24 - BEFORE_S / 3600) % 24;
  const normal = { ...blueprint(noUpset()), state: 'normal', snapshot: view.nominal.at(fromH) } as const;
  const healthy = lived(normal, fromH, BEFORE_S);
  const course = lived(blueprint(upset), hour, hours * 3600);
  const supply = buildSupply(site, upset, context.credit.claimed, taker('nominal', null));
  const isUp = (key: string, t: number) => {
    const monitor = site.monitors.find((one) => one.key === key);
    if (!monitor || t < 0) return true;
    return !upset.deadMonitors.has(key) && phaseAt(supply(monitor.circuit), t).live;
  };
  const happened = { course, healthy, upset, isUp, hour, state, everyS };
  return system.alarms.map(({ key }) => ({
    key,
    review: course.record.alarms.get(key),
    live: liveRaise(site, system, key, happened),
  }));
}

interface Happened extends Required<Pick<Happens, 'hour' | 'state' | 'everyS'>> {
  course: Lived;
  /** What was before the onset. */
  healthy: Lived;
  upset: Upset;
  /** Whether a monitor has power, s after the onset. */
  isUp: (key: string, t: number) => boolean;
}

/** The alarm as it is raised by readings of every sensor it is held to, s after the onset. */
function liveRaise(site: Facility, system: System, key: string, happened: Happened): number | undefined {
  const definition = system.alarms.find((one) => one.key === key);
  const condition = definition && conditionOf(site, system, definition);
  if (!condition) return undefined;
  const { course, everyS, isUp } = happened;
  const around = aroundOf(system, happened);
  const shows = showsOf(system, sensorsOf(condition), happened);
  const hosts = site.monitors.filter(({ kind }) => kind === 'host' || kind === 'router').map((one) => one.key);
  let watch: Watch = beginWatch(condition, -BEFORE_S * 1000);
  let wasAway = false;
  for (let s = -BEFORE_S; s <= course.record.endS; s += s < -60 ? RARELY_S : everyS) {
    // What was raised or waited for by then is of the healthy system, and not looked for.
    if (s === 0 && condition.kind !== 'silence') watch = { ...watch, phase: 'normal', dueMs: null };
    const isAway = !hosts.every((host) => isUp(host, s));
    const [was, nowMs] = [wasAway, s * 1000];
    wasAway = isAway;
    if (isAway) continue;
    const seen = shows.filter(({ gateway }) => isUp(gateway, s)).map(({ read, ...of }) => ({ ...of, value: read(s) }));
    const good = { atMs: nowMs, cameMs: nowMs, quality: 'good', isByHand: false } as const;
    const all = seen.map(({ sensor, value }) => ({ sensor, value, ...good }));
    const passed = passSite([{ alarm: key, condition, watch }], all, nowMs, was, around);
    if (s >= 0 && passed.turns.some(({ turn }) => turn.kind === 'raised')) return s;
    watch = passed.changed[0]?.watch ?? watch;
  }
  return undefined;
}

/** Readings that come, by sensor. */
function showsOf(system: System, ids: readonly string[], happened: Happened) {
  return system.sensors.flatMap((sensor) => {
    const id = `${system.key}/${sensor.key}`;
    const isTold = ids.includes(id) && happened.upset.probes.get(sensor.key)?.as !== 'lost';
    return isTold ? [{ sensor: id, gateway: sensor.gateway ?? '', read: readOf(system, sensor, happened) }] : [];
  });
}

/** What a sensor reads, s after the onset. */
function readOf(system: System, sensor: Sensor, { course, healthy, upset, hour }: Happened): (s: number) => number {
  const [before, after] = [
    readIn(system, sensor, healthy, noUpset(), hour),
    readIn(system, sensor, course, upset, hour),
  ];
  return (s) => (s < 0 ? before(s + BEFORE_S) : after(s));
}

/** What a sensor reads in a course, s after its beginning. */
function readIn(system: System, sensor: Sensor, lived: Lived, upset: Upset, hour: number): (s: number) => number {
  const { machine, shown } = lived;
  let k = 0;
  const devicesAt = (s: number) => {
    while (k + 1 < shown.length && (shown[k + 1]?.t ?? Infinity) <= s) k++;
    return shown[k]?.devices ?? [];
  };
  if (sensor.quantity === 'flow') {
    const pumps = machine.devices.flatMap(({ type }, i) => (type === 'return-pump' ? [i] : []));
    return (s) => (pumps.some((i) => devicesAt(s)[i]?.working) ? 3000 : 0);
  }
  if (sensor.quantity === 'watts') {
    const i = system.equipment.findIndex(({ key }) => key === sensor.equipment);
    const rated = system.equipment[i]?.ratedW?.value ?? Number.NaN;
    return (s) => {
      const one = devicesAt(s)[i];
      return one?.working ? rated : one?.drawing ? IDLE * rated : 0;
    };
  }
  const node = (tank: string | undefined) => machine.nodes.findIndex(({ key }) => key === tank);
  const signal = signalOf(system, sensor.key, machine.plant, { node, reservoir: () => -1 }, upset);
  return courseOf(lived, hour * 3600, [signal]);
}

function aroundOf({ key }: System, { state, hour, course }: Happened): Around {
  const toMs = (course.machine.span?.endsS ?? 0) * 1000;
  const spell = { system: key, state, fromMs: 0, toMs: Number.isFinite(toMs) ? toMs : null, untilMs: toMs };
  return { spells: state === 'normal' ? [] : [spell], daySecond: (ms) => hour * 3600 + ms / 1000 };
}
