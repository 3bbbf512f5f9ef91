import type { Condition } from '../alarms/condition';
import { conditionOf } from '../alarms/condition-of';
import type { AlarmDefinition } from '../alarms/definition';
import type { Sensor } from '../facility/system';
import type { Build } from './build';
import { BLANK, heardBy, unheard } from './alarm-ways';
import { courseAlarm } from './build-course-alarms';
import { meterWatch, powerWatch } from './build-power';
import { steady } from './build-supply';
import { deviceIndex, gatewaysOf, monitorSupply, ofKind, wattsSensor, wayOf } from './build-ways';
import { signalOf } from './build-signals';
import type { PowerPhase } from './device';
import type { AlarmWatch } from './machine';
import { type Watch, watch } from './watch';

/** Litres at which a floor sensor counts as wet. Common practice, no source. */
const WET_L = 0.2;
/** How far a value that sits on a limit must come back to be inside it, in the sensor's unit. */
const SLACK = 1e-6;

/** Key under which the watch outside the site is reported. */
export const WATCHDOG = 'watchdog';

/** Every alarm definition of the system as a run follows it, and the site's outside watch. */
export function buildAlarms(build: Build): AlarmWatch[] {
  const alarms = build.system.alarms.map((alarm, i) => {
    const made = alarmOf(build, alarm, i);
    return build.upset.mutedAlarms.has(alarm.key) ? { ...made, path: [steady(false)] } : made;
  });
  const outside = build.facility.site.watchdog;
  if (!outside || build.upset.mutedAlarms.has(WATCHDOG)) return alarms;
  // Outside, silence is all that is known: of the host first, which everything passes through.
  const host = hostOf(build);
  return [...alarms, { ...BLANK, key: WATCHDOG, delayS: outside.afterMin * 60, silent: host }];
}

/** The host's supply, else the router's, else always live (nothing is described that could fail). */
function hostOf(build: Build): PowerPhase[] {
  return ofKind(build, ['host'])[0] ?? ofKind(build, ['router'])[0] ?? steady(true);
}

function alarmOf(build: Build, alarm: AlarmDefinition, index: number): AlarmWatch {
  const [carries, tells] = [ofKind(build, ['host', 'router']), ofKind(build, ['mail'])];
  const condition = conditionOf(build.facility, build.system, alarm);
  const base = { ...BLANK, key: alarm.key, delayS: condition?.delayS ?? alarm.delayS, path: [...carries, ...tells] };
  // What readings are never held to is never raised.
  if (condition === null && alarm.on.kind !== 'sensor') return unheard(base);
  const heard = { ...base, heard: carries };
  switch (alarm.on.kind) {
    case 'silent':
      return { ...base, heard: ofKind(build, ['host']), silent: monitorSupply(build, alarm.on.gateway) };
    case 'silent-sensor':
      return { ...base, heard: ofKind(build, ['host']), silent: sensorSilence(build, alarm.on.sensor) };
    case 'watts':
      return powerAlarm(build, condition, alarm.on.equipment, heard, index);
    case 'sensor':
      return sensorAlarm(build, alarm, heard, index);
    case 'rate':
    case 'deviation':
    case 'frozen':
    case 'run-limit':
    case 'state-outstayed':
      return courseAlarm(build, alarm, condition, heard);
  }
}

function powerAlarm(
  build: Build,
  condition: Condition | null,
  key: string,
  base: AlarmWatch,
  index: number,
): AlarmWatch {
  if (condition?.kind !== 'limits') return unheard(base);
  const alarm = heardBy(base, wayOf(build, wattsSensor(build, key)));
  return { ...alarm, device: deviceIndex(build, key), power: powerWatch(build, condition, key, index) };
}

/**
 * When a sensor says something: while it is there and its gateway has power. One that lies goes on speaking. Of a sensor
 * without a gateway it is not known what carries it, so its silence is never noticed by this.
 */
function sensorSilence(build: Build, key: string): PowerPhase[] {
  if (build.upset.probes.get(key)?.as === 'lost') return steady(false);
  const gateway = build.system.sensors.find((s) => s.key === key)?.gateway;
  return gateway ? monitorSupply(build, gateway) : steady(true);
}

function sensorAlarm(build: Build, alarm: AlarmDefinition, base: AlarmWatch, index: number): AlarmWatch {
  if (alarm.on.kind !== 'sensor') return base;
  const { sensor: key, above, below } = alarm.on;
  const sensor = build.system.sensors.find((s) => s.key === key);
  if (sensor?.quantity === 'watts') return meterAlarm(build, alarm, sensor, base);
  // Of the return's flow it is only known whether it has ceased.
  if (sensor?.quantity === 'flow')
    return (below ?? 0) > 0 ? { ...heardBy(base, wayOf(build, sensor)), flow: true } : unheard(base);
  const signal = signalOf(build.system, key, build.plant, build.places, build.upset);
  const watches: Watch[] =
    sensor?.quantity === 'leak'
      ? [watch('alarm', index, signal, 1, WET_L, WET_L / 2)]
      : [
          // While a delay runs, back inside the limit is back: the dead band is for what was raised already.
          ...(above === undefined ? [] : [watch('alarm', index, signal, 1, above, above - SLACK)]),
          ...(below === undefined ? [] : [watch('alarm', index, signal, -1, below, below + SLACK)]),
        ];
  build.watches.push(...watches);
  return { ...heardBy(base, gatewaysOf(build, sensor?.gateway)), watches };
}

function meterAlarm(build: Build, alarm: AlarmDefinition, meter: Sensor, base: AlarmWatch): AlarmWatch {
  const condition = conditionOf(build.facility, build.system, alarm);
  const key = meter.equipment;
  if (condition?.kind !== 'limits' || key === undefined) return unheard(base);
  const power = meterWatch(build, condition, key);
  return { ...heardBy(base, wayOf(build, meter)), device: deviceIndex(build, key), power };
}
