import type { AlarmDefinition } from '../alarms/definition';
import type { Build } from './build';
import { steady } from './build-supply';
import { courseAlarm } from './build-course-alarms';
import { deviceIndex, gatewaysOf, monitorSupply, ofKind, wattsSensor, wayOf } from './build-ways';
import { signalOf } from './build-signals';
import type { PowerPhase } from './device';
import type { AlarmWatch } from './machine';
import { type Watch, watch } from './watch';

/** Litres at which a floor sensor counts as wet. Common practice, no source. */
const WET_L = 0.2;

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

const BLANK: Omit<AlarmWatch, 'key' | 'delayS'> = {
  watches: [],
  device: -1,
  flow: false,
  runs: false,
  state: false,
  followed: null,
  path: [],
  silent: null,
};

/** The host's supply, else the router's, else always live (nothing is described that could fail). */
function hostOf(build: Build): PowerPhase[] {
  return ofKind(build, ['host'])[0] ?? ofKind(build, ['router'])[0] ?? steady(true);
}

function alarmOf(build: Build, alarm: AlarmDefinition, index: number): AlarmWatch {
  const base = { ...BLANK, key: alarm.key, delayS: alarm.delayS, path: ofKind(build, ['host', 'router', 'mail']) };
  switch (alarm.on.kind) {
    case 'silent':
      return { ...base, silent: monitorSupply(build, alarm.on.gateway) };
    case 'silent-sensor':
      return { ...base, silent: sensorSilence(build, alarm.on.sensor) };
    case 'watts':
      return {
        ...base,
        device: deviceIndex(build, alarm.on.equipment),
        path: [...base.path, ...wayOf(build, wattsSensor(build, alarm.on.equipment))],
      };
    case 'sensor':
      return sensorAlarm(build, alarm, base, index);
    case 'rate':
    case 'deviation':
    case 'frozen':
    case 'run-limit':
    case 'state-outstayed':
      return courseAlarm(build, alarm, base);
  }
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
  const carried = { ...base, path: [...base.path, ...gatewaysOf(build, sensor?.gateway)] };
  const metered = { ...base, path: [...base.path, ...wayOf(build, sensor)] };
  if (sensor?.quantity === 'watts') return { ...metered, device: deviceIndex(build, sensor.equipment) };
  if (sensor?.quantity === 'flow') return { ...metered, flow: true };
  const signal = signalOf(build.system, key, build.plant, build.places, build.upset);
  const band = Math.max(alarm.deadBand, 1e-6);
  const watches: Watch[] =
    sensor?.quantity === 'leak'
      ? [watch('alarm', index, signal, 1, WET_L, WET_L / 2)]
      : [
          ...(above === undefined ? [] : [watch('alarm', index, signal, 1, above, above - band)]),
          ...(below === undefined ? [] : [watch('alarm', index, signal, -1, below, below + band)]),
        ];
  build.watches.push(...watches);
  return { ...carried, watches };
}
