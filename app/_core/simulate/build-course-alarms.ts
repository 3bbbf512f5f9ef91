import type { Condition } from '../alarms/condition';
import type { AlarmDefinition, AlarmSource } from '../alarms/definition';
import { sensorsNamed } from '../alarms/definition';
import { noUpset } from '../faults/upset';
import { endsItself } from '../states/state-end';
import { stateMinOf } from '../equipment/defaults';
import { MINUTE } from '../time/week';
import { heardBy, unheard } from './alarm-ways';
import type { Build } from './build';
import { deviceIndex, gatewaysOf, wattsSensor, wayOf } from './build-ways';
import { signalOf } from './build-signals';
import type { AlarmWatch, RunsBy } from './machine';

type On<K extends AlarmSource['kind']> = Extract<AlarmSource, { kind: K }>;

/**
 * An alarm that goes by how something went: a rate, two probes, one that stands still, a run, a state. What the model has no
 * signal for is never raised here.
 *
 * @param condition   what readings are held to, and this with them
 * @param base        what every alarm has
 */
export function courseAlarm(
  build: Build,
  alarm: AlarmDefinition,
  condition: Condition | null,
  base: AlarmWatch,
): AlarmWatch {
  const { on } = alarm;
  if (on.kind === 'run-limit') return runAlarm(build, condition, on, base);
  if (on.kind === 'state-outstayed') return stateAlarm(build, on, base);
  const sensors = sensorsNamed(on).map((key) => build.system.sensors.find((one) => one.key === key));
  const heard = heardBy(
    base,
    sensors.flatMap((sensor) => gatewaysOf(build, sensor?.gateway)),
  );
  const of = sensorsNamed(on).map((key) => signalOf(build.system, key, build.plant, build.places, build.upset));
  if (condition?.kind === 'still') return { ...heard, followed: { kind: 'still', of } };
  if (condition?.kind !== 'limits') return unheard(base);
  const { of: worked, above = Number.POSITIVE_INFINITY, below = Number.NEGATIVE_INFINITY } = condition;
  if (worked?.kind === 'rate') {
    const was = signalOf(
      build.system,
      condition.sensor.slice(build.system.key.length + 1),
      build.plant,
      build.places,
      noUpset(),
    );
    return { ...heard, followed: { kind: 'rate', of, was, meanS: worked.meanS, above, below } };
  }
  if (worked?.kind === 'difference') return { ...heard, followed: { kind: 'difference', of, above, below: -above } };
  return unheard(base);
}

/** Of a flow sensor it is only known whether the return moves, so that it counts for the return pumps alone. */
function runAlarm(build: Build, condition: Condition | null, on: On<'run-limit'>, base: AlarmWatch): AlarmWatch {
  const by =
    on.flow === undefined ? wattsSensor(build, on.equipment) : build.system.sensors.find(({ key }) => key === on.flow);
  const device = deviceIndex(build, on.equipment);
  if (!by || device < 0 || condition?.kind !== 'limits') return unheard(base);
  const runs: RunsBy = on.flow === undefined ? 'drawing' : 'working';
  const watched = { ...heardBy(base, wayOf(build, by)), device };
  if (on.longerThanMin !== undefined) return { ...watched, runs };
  const most = condition.above ?? Number.POSITIVE_INFINITY;
  return { ...watched, followed: { kind: 'starts', most, by: runs, runs: null, seen: [] } };
}

/** Nobody says that a state is in force which a device begins and ends: that it outstays is then not noticed by this. */
function stateAlarm(build: Build, on: On<'state-outstayed'>, base: AlarmWatch): AlarmWatch {
  if (build.state !== on.state || endsItself(build.system, on.state)) return unheard(base);
  const described = build.system.states.find(({ name }) => name === on.state)?.lastsMin?.value;
  const afterMin = on.afterMin ?? described ?? stateMinOf(on.state).value;
  // Goes by the clock, and by no reading.
  return { ...base, heard: [], state: true, delayS: afterMin * MINUTE + base.delayS };
}
