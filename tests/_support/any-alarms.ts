import type { AlarmDefinition, AlarmSource } from '#core/alarms/definition';
import { isNeverSuppressed } from '#core/alarms/life/suppression';
import { PRIORITIES } from '#core/alarms/design/priority';
import type { Sensor } from '#core/facility/system';
import type { Safeguard } from '#core/plans/safeguard';
import fc from 'fast-check';
import { anyName, anyNumber, maybe, someOf } from './any-figure';
import { anyBounds, maybeSafeguard } from './any-plan';
import type { SiteGround } from './any-system';

type Sources = fc.Arbitrary<AlarmSource>[];
type Of<K extends AlarmSource['kind']> = Extract<AlarmSource, { kind: K }>;

/** Valid alarms of every kind that these sensors and gateways allow; those of states the system may not have are to be left out. */
export function anyAlarms(
  sensors: readonly Sensor[],
  ground: Pick<SiteGround, 'gateways' | 'people'>,
  safeguards: readonly Safeguard[],
): fc.Arbitrary<AlarmDefinition[]> {
  const on: Sources = [
    ...ground.gateways.map((gateway) => fc.constant<AlarmSource>({ kind: 'silent', gateway })),
    anyOutstayed(),
    ...sensors.flatMap(({ key }) => ofSensor(key)),
    ...sensors.flatMap((one, at) => pairAlike(one, sensors.slice(at + 1))),
    ...sensors.flatMap(({ equipment }) => (equipment === undefined ? [] : ofMeter(equipment, sensors))),
  ];
  return fc
    .array(anyRest(fc.oneof(...on), ground, safeguards), { maxLength: 4 })
    .map((list) => list.map((one, at) => allowed(sensors, { key: `alarm-${at}`, ...one } as AlarmDefinition)));
}

/** Without the states that must not suppress what it watches. */
function allowed(sensors: readonly Sensor[], { suppressedIn, ...alarm }: AlarmDefinition): AlarmDefinition {
  const mayBe = suppressedIn !== undefined && !isNeverSuppressed({ sensors: [...sensors] }, alarm);
  return mayBe ? { ...alarm, suppressedIn } : alarm;
}

function anyRest(
  on: fc.Arbitrary<AlarmSource>,
  { people }: Pick<SiteGround, 'people'>,
  safeguards: readonly Safeguard[],
) {
  return fc.record({
    name: anyName(),
    on,
    delayS: anyNumber(0, 3600),
    deadBand: anyNumber(0, 10),
    offDelayS: maybe(anyNumber(0, 3600)),
    priority: maybe(fc.record({ level: fc.constantFrom(...PRIORITIES), why: anyName() })),
    latched: maybe(fc.boolean()),
    suppressedIn: maybe(someOf(['feeding', 'backwash', 'night'] as const, 1)),
    cause: maybe(anyName()),
    consequence: maybe(anyName()),
    whatToDo: maybe(anyName()),
    escalateAfterMin: maybe(anyNumber(0, 600)),
    answeredBy: fc.oneof(fc.constantFrom('rota', 'nobody'), someOf(people, 1)),
    safeguard: maybeSafeguard(safeguards, 'alarm'),
  });
}

function anyOutstayed(): fc.Arbitrary<AlarmSource> {
  const states = fc.constantFrom('feeding', 'water-change', 'night');
  return fc
    .record({ kind: fc.constant('state-outstayed'), state: states, afterMin: maybe(anyNumber(1, 600)) })
    .map((one) => one as Of<'state-outstayed'>);
}

function ofSensor(sensor: string): Sources {
  const rate = fc.record({
    risesPerHour: anyNumber(0.1, 20),
    fallsPerHour: maybe(anyNumber(0.1, 20)),
    overMin: anyNumber(1, 600),
  });
  return [
    fc.constant({ kind: 'silent-sensor', sensor }),
    anyBounds(-100, 100).map((bounds) => ({ kind: 'sensor', sensor, ...bounds })),
    rate.map((more) => ({ kind: 'rate', sensor, ...more }) as Of<'rate'>),
    anyNumber(0, 10).map((within) => ({ kind: 'frozen', sensor, within })),
  ];
}

/** Two sensors of one quantity that part. */
function pairAlike({ key, quantity }: Sensor, rest: readonly Sensor[]): Sources {
  const other = rest.find((one) => one.quantity === quantity);
  return other ? [anyNumber(0.1, 10).map((by) => ({ kind: 'deviation', sensor: key, other: other.key, by }))] : [];
}

function ofMeter(equipment: string, sensors: readonly Sensor[]): Sources {
  const flow = sensors.find(({ quantity }) => quantity === 'flow')?.key;
  const by = { flow: maybe(fc.constant(flow)) };
  const run = fc.oneof(
    fc.record({ ...by, longerThanMin: anyNumber(1, 999) }),
    fc.record({ ...by, startsPerHour: anyNumber(1, 60) }),
  );
  return [
    fc.constant({ kind: 'watts', equipment }),
    run.map((more) => ({ kind: 'run-limit', equipment, ...more }) as Of<'run-limit'>),
  ];
}
