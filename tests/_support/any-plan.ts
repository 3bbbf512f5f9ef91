import type { CarriedOutBy } from '#core/facility/site';
import type { EquipmentType, Sensor } from '#core/facility/system';
import type { CutOut, Interlock, Plan, Regulation, StateLine } from '#core/plans/plan';
import type { Safeguard, SafeguardKind } from '#core/plans/safeguard';
import fc from 'fast-check';
import { anyNumber, maybeOneOf, someOf } from './any-figure';

/** What a plan may speak of. */
export interface PlanGround {
  tanks: readonly string[];
  sensors: readonly Sensor[];
  safeguards: readonly Safeguard[];
  /** Ways in which the loss of the return can be proved here; none without a return pump. */
  proofs: readonly ('flow' | 'watts' | 'command')[];
}

export const anyBy = (): fc.Arbitrary<CarriedOutBy> => fc.constantFrom('hard-wired', 'controller', 'person');
const STATES = ['feeding', 'water-change', 'backwash', 'treatment', 'night'] as const;

/** A time of day. */
export function anyTime(): fc.Arbitrary<string> {
  const two = (value: number) => String(value).padStart(2, '0');
  return fc.tuple(fc.nat(23), fc.nat(59)).map(([hour, minute]) => `${two(hour)}:${two(minute)}`);
}

/** A key of a safeguard of this kind, or nothing. */
export function maybeSafeguard(of: readonly Safeguard[], kind: SafeguardKind): fc.Arbitrary<string | undefined> {
  return maybeOneOf(of.filter((one) => one.kind === kind).map(({ key }) => key));
}

/** `above`, `below`, or both with `below` the smaller. */
export function anyBounds(min: number, max: number): fc.Arbitrary<{ above?: number; below?: number }> {
  const both = fc.tuple(anyNumber(min, max), anyNumber(min, max)).filter(([a, b]) => a !== b);
  return fc.oneof(
    anyNumber(min, max).map((above) => ({ above })),
    anyNumber(min, max).map((below) => ({ below })),
    both.map(([a, b]) => ({ above: Math.max(a, b), below: Math.min(a, b) })),
  );
}

/** A valid plan for equipment of this type. */
export function anyPlan(type: EquipmentType, ground: PlanGround): fc.Arbitrary<Plan> {
  return anyRegulation(type, ground).chain((regulation) => {
    const reads = regulation.kind === 'thermostat' || regulation.kind === 'level';
    return fc.record({
      cutOuts: anyCutOuts(ground),
      interlocks: anyInterlocks(ground),
      lostSensing: reads
        ? fc.option(fc.record({ action: fc.constantFrom('off', 'on', 'hold'), by: anyBy() }), { nil: undefined })
        : fc.constant(undefined),
      states: anyStateLines(),
      regulation: fc.constant(regulation),
      ownWord: fc.option(fc.constant({ why: 'nobody else keeps this site' }), { nil: undefined }),
    }) as fc.Arbitrary<Plan>;
  });
}

function anyCutOuts({ tanks, safeguards }: PlanGround): fc.Arbitrary<CutOut[]> {
  const proofs = safeguards.filter(({ kind }) => kind === 'cut-out').map(({ key }) => key);
  if (proofs.length === 0) return fc.constant([]);
  const rest = fc.record({
    quantity: fc.constantFrom('temperature', 'level'),
    tank: fc.constantFrom(...tanks),
    reset: fc.constantFrom('manual', 'automatic'),
    safeguard: fc.constantFrom(...proofs),
  });
  const one = fc.tuple(rest, anyBounds(-100, 100)).map(([line, bounds]) => ({ ...line, ...bounds }) as CutOut);
  return fc.array(one, { maxLength: 2 });
}

function anyInterlocks({ sensors, safeguards, proofs }: PlanGround): fc.Arbitrary<Interlock[]> {
  const conditions: fc.Arbitrary<Interlock['when']>[] = [];
  if (proofs.length > 0)
    conditions.push(fc.record({ kind: fc.constant('return-lost' as const), provedBy: fc.constantFrom(...proofs) }));
  if (sensors.length > 0)
    conditions.push(
      fc.tuple(fc.constantFrom(...sensors), anyBounds(-100, 100)).map(([{ key }, bounds]) => ({
        kind: 'sensor' as const,
        sensor: key,
        ...bounds,
      })),
    );
  if (conditions.length === 0) return fc.constant([]);
  const one = fc.record({
    when: fc.oneof(...conditions),
    then: fc.constantFrom('off' as const, 'on' as const),
    by: anyBy(),
    safeguard: maybeSafeguard(safeguards, 'interlock'),
  });
  return fc.array(one, { maxLength: 2 });
}

function anyStateLines(): fc.Arbitrary<StateLine[]> {
  return someOf(STATES).chain((states) =>
    fc.tuple(...states.map((state) => anyBy().map((by): StateLine => ({ state, then: 'off', by })))),
  );
}

function anyRegulation(type: EquipmentType, ground: PlanGround): fc.Arbitrary<Regulation> {
  const by = anyBy();
  const hours = fc.uniqueArray(anyTime(), { minLength: 2, maxLength: 2 });
  const choices: fc.Arbitrary<Regulation>[] = [
    fc.record({ kind: fc.constant('always' as const), by }),
    fc.record({ kind: fc.constant('never' as const), by }),
    fc.tuple(hours, by).map(([[from = '', to = ''], who]) => ({ kind: 'hours' as const, from, to, by: who })),
  ];
  const keys = (quantity: string) => ground.sensors.filter((one) => one.quantity === quantity).map(({ key }) => key);
  if ((type === 'heater' || type === 'chiller') && keys('temperature').length > 0)
    choices.push(anyThermostat(keys('temperature')));
  if (type === 'top-off' && keys('level').length > 0) choices.push(anyLevelControl(keys('level'), ground));
  const [last] = choices.slice(-1);
  return fc.oneof(...choices, ...(last ? [{ arbitrary: last, weight: 4 }] : []));
}

function anyThermostat(keys: readonly string[]): fc.Arbitrary<Regulation> {
  const ends = fc.tuple(anyNumber(-5, 60), anyNumber(-5, 60)).filter(([a, b]) => a !== b);
  const pause = fc.option(anyNumber(0, 3600), { nil: undefined });
  return fc
    .tuple(someOf(keys, 1), ends, pause, pause, fc.constantFrom('median', 'highest', 'lowest'), anyBy())
    .map(([sensors, [a, b], minOnS, minOffS, many, by]) => ({
      kind: 'thermostat' as const,
      sensors,
      vote: sensors.length === 1 ? ('single' as const) : many,
      lowC: Math.min(a, b),
      highC: Math.max(a, b),
      minOnS,
      minOffS,
      by,
    }));
}

function anyLevelControl(keys: readonly string[], { safeguards }: PlanGround): fc.Arbitrary<Regulation> {
  const ends = fc.tuple(anyNumber(-200, 200), anyNumber(-200, 200)).filter(([a, b]) => a !== b);
  const limit = fc.option(fc.tuple(anyNumber(0, 600), maybeSafeguard(safeguards, 'run-limit')), { nil: undefined });
  return fc.tuple(fc.constantFrom(...keys), ends, limit, anyBy()).map(([sensor, [a, b], run, by]) => ({
    kind: 'level' as const,
    sensor,
    lowMm: Math.min(a, b),
    highMm: Math.max(a, b),
    runLimitMin: run?.[0],
    runLimitSafeguard: run?.[1],
    by,
  }));
}
