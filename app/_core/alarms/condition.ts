import type { Facility } from '../facility/facility';
import type { Sensor, System } from '../facility/system';
import type { AlarmDefinition } from './definition';

/** A leak sensor says 1 for wet and 0 for dry; nothing between is ever meant. */
const WET = 0.5;
/** W up to which a piece of equipment counts as drawing nothing: what its switch and the meter itself take. Common practice, no source. */
const IDLE_W = 2;
/** Shortest silence, s, that is one: less is the pause between two readings. Common practice, no source. */
const LEAST_SILENCE_S = 10;

/** What an alarm holds readings to: all that decides whether it is true, and nothing else. */
export type Condition = Limits | Silence;

/** One sensor is held to limits. */
export interface Limits {
  kind: 'limits';
  sensor: string;
  /** True above this value, in the sensor's unit. */
  above?: number;
  /** True below this value. */
  below?: number;
  /** Values below this one are not judged: a piece of equipment that draws nothing is off, and may be meant to be. */
  from?: number;
  deadBand: number;
  delayS: number;
  offDelayS: number;
  /** Whether readings come by themselves: then those taken by hand may call and never silence. */
  isCarried: boolean;
}

/** Nothing usable comes from any of these sensors. */
export interface Silence {
  kind: 'silence';
  sensors: string[];
  /** Whether a bad reading is a word as well: it tells nothing of the water, but its gateway is there. */
  anyWord: boolean;
  delayS: number;
  offDelayS: number;
  isCarried: boolean;
}

/**
 * What the readings are held to, by the definition of an alarm and what it watches.
 *
 * @param facility   the whole site: a gateway carries sensors of several systems
 * @returns          null when there is nothing to hold it to: no meter, no watts range, no sensor on the gateway
 */
export function conditionOf(facility: Facility, system: System, alarm: AlarmDefinition): Condition | null {
  const { on, delayS, offDelayS = 0, deadBand } = alarm;
  switch (on.kind) {
    case 'sensor': {
      const sensor = system.sensors.find(({ key }) => key === on.sensor);
      if (!sensor) return null;
      const held = {
        kind: 'limits',
        sensor: idOf(system, sensor),
        delayS,
        offDelayS,
        isCarried: isCarried(sensor),
      } as const;
      if (sensor.quantity === 'leak') return { ...held, above: WET, deadBand: 0 };
      const { above, below } = on;
      const limits = { ...(above === undefined ? {} : { above }), ...(below === undefined ? {} : { below }) };
      return { ...held, ...limits, deadBand: bandWithin(on, deadBand) };
    }
    case 'watts':
      return wattsCondition(system, alarm, on.equipment);
    case 'silent': {
      const carried = facility.systems.flatMap((one) =>
        one.sensors.filter(({ gateway }) => gateway === on.gateway).map((sensor) => idOf(one, sensor)),
      );
      return carried.length === 0 ? null : silenceOf(carried, alarm, { anyWord: true, isCarried: true });
    }
    case 'silent-sensor': {
      const sensor = system.sensors.find(({ key }) => key === on.sensor);
      if (!sensor) return null;
      return silenceOf([idOf(system, sensor)], alarm, { anyWord: false, isCarried: isCarried(sensor) });
    }
    case 'rate':
    case 'deviation':
    case 'frozen':
    case 'run-limit':
    case 'state-outstayed':
      return null;
  }
}

/** How a sensor is told from those of other systems here. @param system the one it belongs to */
function idOf({ key }: Pick<System, 'key'>, sensor: Pick<Sensor, 'key'>): string {
  return `${key}/${sensor.key}`;
}

function isCarried({ gateway }: Sensor): boolean {
  return gateway !== undefined;
}

function silenceOf(
  sensors: string[],
  { delayS, offDelayS = 0 }: AlarmDefinition,
  more: Pick<Silence, 'anyWord' | 'isCarried'>,
): Silence {
  return { kind: 'silence', sensors, delayS: Math.max(delayS, LEAST_SILENCE_S), offDelayS, ...more };
}

/** Outside the watts range while it draws. That it draws nothing is abnormal only where it is always meant to run. */
function wattsCondition(
  system: System,
  { delayS, offDelayS = 0, deadBand }: AlarmDefinition,
  key: string,
): Limits | null {
  const meter = system.sensors.find(({ quantity, equipment }) => quantity === 'watts' && equipment === key);
  const equipment = system.equipment.find((one) => one.key === key);
  if (!(meter && equipment?.wattsRange)) return null;
  const { minW, maxW } = equipment.wattsRange;
  const { regulation, states } = equipment.plan;
  const alwaysOn = regulation.kind === 'always' && states.every(({ then }) => then === 'on');
  return {
    kind: 'limits',
    sensor: idOf(system, meter),
    above: maxW,
    below: minW,
    ...(alwaysOn ? {} : { from: IDLE_W }),
    deadBand: bandWithin({ above: maxW, below: minW }, deadBand),
    delayS,
    offDelayS,
    isCarried: isCarried(meter),
  };
}

/** A dead band that leaves a value between two limits at which the alarm clears. */
function bandWithin(
  { above = Infinity, below = -Infinity }: { above?: number; below?: number },
  deadBand: number,
): number {
  return Math.max(0, Math.min(deadBand, (above - below) / 2));
}
