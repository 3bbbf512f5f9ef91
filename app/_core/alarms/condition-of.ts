import type { Facility } from '../facility/facility';
import type { System } from '../facility/system';
import { DAY, MINUTE } from '../time/week';
import { bandWithin } from './band';
import type { Condition, Limits, Silence } from './condition';
import { runCondition, wattsCondition } from './condition-of-equipment';
import type { AlarmDefinition, AlarmSource } from './definition';
import { type Series, seriesOf } from './series';

/** A leak sensor says 1 for wet and 0 for dry; nothing between is ever meant. */
const WET = 0.5;
/** Shortest silence, s, that is one: less is the pause between two readings. Common practice, no source. */
const LEAST_SILENCE_S = 10;
/** Least s for which a reading that does not move counts as one that stands still. Common practice, no source. */
const LEAST_STILL_S = 60;

type On<K extends AlarmSource['kind']> = Extract<AlarmSource, { kind: K }>;

/**
 * What the readings are held to, by the definition of an alarm and what it watches.
 *
 * @param facility   the whole site: a gateway carries sensors of several systems
 * @returns          null when there is nothing to hold it to: no meter, no watts range, no sensor on the gateway
 */
export function conditionOf(facility: Facility, system: System, alarm: AlarmDefinition): Condition | null {
  const { on } = alarm;
  switch (on.kind) {
    case 'sensor':
      return sensorCondition(system, alarm, on);
    case 'rate':
      return rateCondition(system, alarm, on);
    case 'deviation':
      return deviationCondition(system, alarm, on);
    case 'frozen': {
      const series = seriesOf(system, on.sensor);
      const delayS = Math.max(alarm.delayS, LEAST_STILL_S);
      return series && { kind: 'still', ...held(series, alarm), within: on.within, delayS };
    }
    case 'watts':
      return wattsCondition(system, alarm, on.equipment);
    case 'run-limit':
      return runCondition(system, alarm, on);
    case 'state-outstayed':
      return {
        kind: 'outstayed',
        system: system.key,
        state: on.state,
        afterS: on.afterMin === undefined ? null : on.afterMin * MINUTE,
        delayS: alarm.delayS,
        offDelayS: 0,
      };
    case 'silent': {
      const carried = facility.systems.flatMap((one) =>
        one.sensors.filter(({ gateway }) => gateway === on.gateway).map(({ key }) => `${one.key}/${key}`),
      );
      return carried.length === 0 ? null : silenceOf(carried, alarm, { anyWord: true, isCarried: true });
    }
    case 'silent-sensor': {
      const series = seriesOf(system, on.sensor);
      return series && silenceOf([series.id], alarm, { anyWord: false, isCarried: series.isCarried });
    }
  }
}

function held({ id, isCarried }: Series, { delayS, offDelayS = 0 }: AlarmDefinition) {
  return { sensor: id, delayS, offDelayS, isCarried };
}

function sensorCondition(system: System, alarm: AlarmDefinition, on: On<'sensor'>): Limits | null {
  const series = seriesOf(system, on.sensor);
  if (!series) return null;
  const limits = { kind: 'limits', ...held(series, alarm) } as const;
  if (series.quantity === 'leak') return { ...limits, above: WET, deadBand: 0 };
  const { above, below } = on;
  return { ...limits, ...given({ above, below }), deadBand: bandWithin(on, alarm.deadBand) };
}

/**
 * A rate is taken against a running mean: twice as long a memory as the mean's time constant holds six sevenths of it, which
 * is what is meant by “over so many minutes”.
 */
function rateCondition(system: System, alarm: AlarmDefinition, on: On<'rate'>): Limits | null {
  const series = seriesOf(system, on.sensor);
  if (!series) return null;
  const above = on.risesPerHour;
  const below = on.fallsPerHour === undefined ? undefined : -on.fallsPerHour;
  const meanS = Math.min((on.overMin * MINUTE) / 2, DAY);
  return {
    kind: 'limits',
    ...held(series, alarm),
    of: { kind: 'rate', meanS },
    ...given({ above, below }),
    // In the unit of the rate; never so wide that standing still would not clear it.
    deadBand: Math.min(alarm.deadBand, above ?? Infinity, on.fallsPerHour ?? Infinity),
  };
}

function deviationCondition(system: System, alarm: AlarmDefinition, on: On<'deviation'>): Limits | null {
  const [one, other] = [seriesOf(system, on.sensor), seriesOf(system, on.other)];
  if (!(one && other)) return null;
  return {
    kind: 'limits',
    ...held(one, alarm),
    isCarried: one.isCarried && other.isCarried,
    of: { kind: 'difference', other: other.id },
    above: on.by,
    deadBand: Math.min(alarm.deadBand, on.by),
  };
}

function silenceOf(
  sensors: string[],
  { delayS, offDelayS = 0 }: AlarmDefinition,
  more: Pick<Silence, 'anyWord' | 'isCarried'>,
): Silence {
  return { kind: 'silence', sensors, delayS: Math.max(delayS, LEAST_SILENCE_S), offDelayS, ...more };
}

function given({ above, below }: { above?: number | undefined; below?: number | undefined }) {
  return { ...(above === undefined ? {} : { above }), ...(below === undefined ? {} : { below }) };
}
