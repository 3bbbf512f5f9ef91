import type { Equipment, Sensor, System } from '../facility/system';
import { HOUR, MINUTE } from '../time/week';
import { bandWithin } from './band';
import type { Limits } from './condition';
import type { AlarmDefinition, AlarmSource } from './definition';
import { meantOf } from './meant-of';
import { seriesOf } from './series';

/** W up to which a piece of equipment counts as drawing nothing: what its switch and the meter itself take. Common practice, no source. */
const IDLE_W = 2;
/** Part of its flow from which a piece of equipment counts as running. Common practice, no source. */
const RUNNING_SHARE = 0.05;
/** s to an hour's starts at most: more are not counted one by one. */
const MOST_STARTS = HOUR / MINUTE;

/** Outside its watts range while it draws; drawing while meant to be off; drawing nothing while meant to run. */
export function wattsCondition(system: System, alarm: AlarmDefinition, key: string): Limits | null {
  const meter = meterOf(system, key);
  const equipment = system.equipment.find((one) => one.key === key);
  if (!(meter && equipment?.wattsRange)) return null;
  const { minW, maxW } = equipment.wattsRange;
  const meant = meantOf(system, equipment);
  return {
    ...heldTo(system, meter, alarm),
    ...(meant === 'always' ? {} : { of: { kind: 'watts', meant }, from: idleOf(equipment) }),
    above: maxW,
    below: minW,
    deadBand: bandWithin({ above: maxW, below: minW }, alarm.deadBand),
  };
}

/** Runs longer at a stretch, or starts more often in an hour, than it should. */
export function runCondition(
  system: System,
  alarm: AlarmDefinition,
  on: Extract<AlarmSource, { kind: 'run-limit' }>,
): Limits | null {
  const equipment = system.equipment.find((one) => one.key === on.equipment);
  const by = on.flow === undefined ? meterOf(system, on.equipment) : sensorOf(system, on.flow);
  if (!(equipment && by)) return null;
  const held = heldTo(system, by, alarm);
  const runsAbove = by.quantity === 'flow' ? RUNNING_SHARE * (equipment.flowLPerH?.value ?? 0) : idleOf(equipment);
  if (on.longerThanMin !== undefined)
    return { ...held, above: runsAbove, deadBand: 0, delayS: on.longerThanMin * MINUTE + alarm.delayS };
  const most = Math.min(on.startsPerHour ?? MOST_STARTS, MOST_STARTS);
  return { ...held, of: { kind: 'starts', runsAbove }, above: most, deadBand: 0 };
}

function heldTo(system: System, sensor: Sensor, { delayS, offDelayS = 0 }: AlarmDefinition) {
  return {
    kind: 'limits',
    sensor: `${system.key}/${sensor.key}`,
    delayS,
    offDelayS,
    isCarried: seriesOf(system, sensor.key)?.isCarried ?? false,
  } as const;
}

function idleOf({ wattsRange }: Equipment): number {
  return Math.min(IDLE_W, (wattsRange?.minW ?? Infinity) / 2);
}

/** The sensor that measures what a piece of equipment draws. */
function meterOf({ sensors }: System, key: string): Sensor | undefined {
  return sensors.find(({ quantity, equipment }) => quantity === 'watts' && equipment === key);
}

function sensorOf({ sensors }: System, key: string): Sensor | undefined {
  return sensors.find((one) => one.key === key);
}
