import { conditionOf } from '../alarms/condition-of';
import type { AlarmDefinition, AlarmSource } from '../alarms/definition';
import { sensorsNamed } from '../alarms/definition';
import { endsItself } from '../states/state-end';
import { stateMinOf } from '../equipment/defaults';
import { MINUTE } from '../time/week';
import type { Build } from './build';
import { steady } from './build-supply';
import { deviceIndex, gatewaysOf, wattsSensor, wayOf } from './build-ways';
import { signalOf } from './build-signals';
import type { AlarmWatch } from './machine';

type On<K extends AlarmSource['kind']> = Extract<AlarmSource, { kind: K }>;

/**
 * An alarm that goes by how something went: a rate, two probes, one that stands still, a run, a state. It is held to the same
 * condition as readings are. What the model has no signal for is never raised here.
 *
 * @param base   what every alarm has
 */
export function courseAlarm(build: Build, alarm: AlarmDefinition, base: AlarmWatch): AlarmWatch {
  const { on } = alarm;
  if (on.kind === 'run-limit') return runAlarm(build, alarm, on, base);
  if (on.kind === 'state-outstayed') return stateAlarm(build, on, base);
  const condition = conditionOf(build.facility, build.system, alarm);
  const never = { ...base, path: [steady(false)] };
  const sensors = sensorsNamed(on).map((key) => build.system.sensors.find((one) => one.key === key));
  const path = [...base.path, ...sensors.flatMap((sensor) => gatewaysOf(build, sensor?.gateway))];
  const of = sensorsNamed(on).map((key) => signalOf(build.system, key, build.plant, build.places, build.upset));
  if (condition?.kind === 'still') return { ...base, delayS: condition.delayS, path, followed: { kind: 'still', of } };
  if (condition?.kind !== 'limits') return never;
  const { of: worked, above = Number.POSITIVE_INFINITY, below = Number.NEGATIVE_INFINITY } = condition;
  if (worked?.kind === 'rate')
    return { ...base, path, followed: { kind: 'rate', of, meanS: worked.meanS, above, below } };
  if (worked?.kind === 'difference')
    return { ...base, path, followed: { kind: 'difference', of, above, below: -above } };
  return never;
}

/** Of a flow sensor it is only known whether the return moves, so that it counts for the return pumps alone. */
function runAlarm(build: Build, alarm: AlarmDefinition, on: On<'run-limit'>, base: AlarmWatch): AlarmWatch {
  const by =
    on.flow === undefined ? wattsSensor(build, on.equipment) : build.system.sensors.find(({ key }) => key === on.flow);
  const device = deviceIndex(build, on.equipment);
  if (!by || device < 0) return { ...base, path: [steady(false)] };
  const watched = { ...base, device, path: [...base.path, ...wayOf(build, by)] };
  if (on.longerThanMin !== undefined)
    return { ...watched, runs: true, delayS: on.longerThanMin * MINUTE + alarm.delayS };
  return { ...watched, followed: { kind: 'starts', most: on.startsPerHour ?? Number.POSITIVE_INFINITY } };
}

/** Nobody says that a state is in force which a device begins and ends: that it outstays is then not noticed by this. */
function stateAlarm(build: Build, on: On<'state-outstayed'>, base: AlarmWatch): AlarmWatch {
  if (build.state !== on.state || endsItself(build.system, on.state)) return { ...base, path: [steady(false)] };
  const described = build.system.states.find(({ name }) => name === on.state)?.lastsMin?.value;
  const afterMin = on.afterMin ?? described ?? stateMinOf(on.state).value;
  return { ...base, state: true, delayS: afterMin * MINUTE + base.delayS };
}
