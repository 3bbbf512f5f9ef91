import { PAPER_KINDS, type Paper } from '#core/facility/paper';
import type { Stock } from '#core/facility/stock';
import {
  FAILS_UNSEEN,
  type FailureRate,
  EQUIPMENT_TYPES,
  type Equipment,
  type EquipmentType,
  type OperatingState,
  PH_SCALES,
  SYSTEM_KINDS,
  type Sensor,
  type System,
  type Tank,
} from '#core/facility/system';
import type { Safeguard } from '#core/plans/safeguard';
import fc from 'fast-check';
import { anyAlarms } from './any-alarms';
import { anyFigure, anyName, anyNumber, anySourced, maybe, maybeOneOf, someOf } from './any-figure';
import { anyBy, anyPlan, maybeSafeguard, type PlanGround } from './any-plan';
import { anyDate, anySafeguards } from './any-safeguard';
import { anyTanks } from './any-tanks';

/** What a site offers a system to refer to. */
export interface SiteGround {
  rooms: readonly string[];
  circuits: readonly string[];
  gateways: readonly string[];
  people: readonly string[];
  profiles: readonly string[];
}

const positive = () => anyFigure(0.001, 1000);
const length = () => maybe(anyFigure(0, 2000));

function anySensors(tanks: readonly Tank[], equipment: readonly string[], ground: SiteGround): fc.Arbitrary<Sensor[]> {
  const place = fc.record({
    quantity: fc.constantFrom(
      'temperature',
      'temperature',
      'temperature',
      'level',
      'level',
      'flow',
      'salinity',
      'oxygen',
    ),
    tank: fc.constantFrom(...tanks.map(({ key }) => key)),
  });
  const ph = fc.record({
    quantity: fc.constant('ph'),
    tank: fc.constantFrom(...tanks.map(({ key }) => key)),
    phScale: maybe(fc.constantFrom(...PH_SCALES)),
  });
  const conductivity = fc.record({
    quantity: fc.constant('conductivity'),
    tank: fc.constantFrom(...tanks.map(({ key }) => key)),
    compensatedToC: maybe(fc.constantFrom(20, 25)),
  });
  const watts = fc.record({ quantity: fc.constant('watts'), equipment: fc.constantFrom(...equipment) });
  const wet = fc.record({ quantity: fc.constant('leak') });
  const rest = fc.record({
    name: anyName(),
    gateway: maybeOneOf(ground.gateways),
    accuracy: maybe(anyFigure(0, 10)),
    lagS: maybe(anyFigure(0, 900)),
    well: maybe(anyName()),
    calibrationDue: maybe(anyDate()),
    calibrateEveryDays: maybe(fc.integer({ min: 1, max: 3660 })),
  });
  return fc
    .array(fc.tuple(fc.oneof(place, place, ph, conductivity, watts, wet), rest), { maxLength: 8 })
    .map((list) => list.map(([where, more], at) => ({ key: `sensor-${at}`, ...where, ...more }) as Sensor));
}

function anyEquipment(
  key: string,
  type: EquipmentType,
  tanks: readonly Tank[],
  ground: SiteGround,
): fc.Arbitrary<Omit<Equipment, 'plan'>> {
  const keys = tanks.map((tank) => tank.key);
  const only = <T>(types: readonly EquipmentType[], thing: fc.Arbitrary<T>) =>
    types.includes(type) ? maybe(thing) : fc.constant(undefined);
  const reservoirs = tanks.filter(({ role }) => role === 'reservoir').map((tank) => tank.key);
  const filled = tanks.map(({ role }) => role).filter((role) => role !== 'reservoir');
  const at: Partial<Record<EquipmentType, Tank['role'][]>> = {
    'return-pump': ['sump'],
    'top-off': filled,
    supply: filled,
    doser: filled,
  };
  const allowed = tanks.filter(({ role }) => at[type]?.includes(role) ?? true);
  const range = fc
    .tuple(anyNumber(0, 500), anyNumber(0, 500))
    .map(([a, b]) => ({ minW: Math.min(a, b), maxW: Math.max(a, b) }));
  const waste = only(['filter', 'drain-valve'], anyFigure(0, 2000));
  const more = anyBringing(type, reservoirs);
  const own = fc.record({
    key: fc.constant(key),
    name: anyName(),
    type: fc.constant(type),
    tank: fc.constantFrom(...allowed.map((tank) => tank.key)),
    circuit: maybeOneOf(ground.circuits),
    relay: maybe(anyName()),
    ratedW: maybe(anyFigure(0, 1000)),
    wattsRange: maybe(range),
    heatToWater: maybe(anyFigure(0, 1)),
    repairMin: maybe(anyFigure(0, 600)),
    spareMin: maybe(anyFigure(0, 10_000)),
    bareBelowMm: length(),
    flowLPerH: only(['return-pump', 'circulation-pump', 'filter', 'top-off', 'doser', 'supply'], anyFigure(0, 10_000)),
    coolingW: only(['chiller'], anyFigure(0, 5000)),
    gasTransferLPerH: only(['skimmer', 'circulation-pump', 'air-blower'], anyFigure(0, 5000)),
    stones: only(
      ['air-blower'],
      fc.array(fc.record({ tank: fc.constantFrom(...keys), count: fc.integer({ min: 1, max: 9 }) })),
    ),
    floodsAboveMm: only(['skimmer'], anyFigure(0, 100)),
    floodLPerHPerMm: only(['skimmer'], anyFigure(0, 10)),
    wasteLPerH: waste,
    wasteToMm: waste,
  });
  return fc.tuple(own, more).map(([one, brings]) => ({ ...one, ...brings }));
}

/** What equipment takes from somewhere, makes or lets in. */
function anyBringing(type: EquipmentType, reservoirs: readonly string[]) {
  const only = <T>(types: readonly EquipmentType[], thing: fc.Arbitrary<T>) =>
    types.includes(type) ? maybe(thing) : fc.constant(undefined);
  return fc.record({
    source:
      type === 'top-off' || type === 'supply'
        ? fc.constantFrom('mains', ...reservoirs)
        : only(['doser'], fc.constantFrom('mains', ...reservoirs)),
    bringsSalinity: only(['supply'], anyFigure(0, 40)),
    bringsC: only(['supply'], anyFigure(0, 40)),
    nitrifiesGPerDay: only(['filter'], anyFigure(0, 500)),
    ozoneGPerH: only(['ozone'], anyFigure(0, 50)),
    dosesMmolPerL: only(['doser'], anyFigure(-2000, 2000)),
    co2GPerH: only(['co2'], anyFigure(0, 50)),
    hopperG: only(['feeder'], anyFigure(0.001, 2000)),
    removes: only(['dechlorinator'], anyFigure(0, 1)),
  });
}

function anyStock(tanks: readonly Tank[], ground: SiteGround): fc.Arbitrary<Stock[]> {
  const rest = fc.record({
    group: anyName(),
    tank: fc.constantFrom(...tanks.filter(({ role }) => role === 'display').map(({ key }) => key)),
    count: fc.nat(1000),
    eachG: positive(),
    profile: maybeOneOf(ground.profiles),
    oxygenMgPerKgH: maybe(anyFigure(0, 1000)),
  });
  return fc.array(rest, { maxLength: 3 }).map((list) => list.map((one, at) => ({ key: `stock-${at}`, ...one })));
}

function anyRates(system: string, safeguards: readonly Safeguard[]): fc.Arbitrary<FailureRate[]> {
  const of = fc.oneof(
    fc.record({ fault: fc.constant('state-alone'), thing: fc.constant(system) }),
    fc.record({ fault: fc.constant(FAILS_UNSEEN), thing: fc.constantFrom(...safeguards.map(({ key }) => key)) }),
  );
  return fc
    .array(fc.tuple(of, anySourced(0, 100)), { maxLength: 3 })
    .map((list) => list.map(([what, perYear], at) => ({ key: `rate-${at}`, ...what, perYear })));
}

function anyStates(safeguards: readonly Safeguard[]): fc.Arbitrary<OperatingState[]> {
  return someOf(['feeding', 'water-change', 'night'] as const).chain((names) =>
    fc.tuple(
      ...names.map((name) =>
        fc.record({
          name: fc.constant(name),
          lastsMin: maybe(anyFigure(0, 600)),
          endsBy: anyBy(),
          endSafeguard: maybeSafeguard(safeguards, 'state-end'),
          drawnL: maybe(positive()),
        }),
      ),
    ),
  );
}

function anyPapers(): fc.Arbitrary<Paper[]> {
  const one = fc.record({ kind: fc.constantFrom(...PAPER_KINDS), on: anyDate(), note: maybe(anyName()) });
  return fc.array(one, { maxLength: 3 }).map((list) => list.map((paper, at) => ({ key: `paper-${at}`, ...paper })));
}

/** A valid system with this key on this site. */
export function anySystem(key: string, ground: SiteGround): fc.Arbitrary<System> {
  return anySafeguards('own').chain((safeguards) =>
    anyTanks(safeguards).chain((tanks) => {
      const hasSump = tanks.some(({ role }) => role === 'sump');
      const possible = EQUIPMENT_TYPES.filter((type) => hasSump || type !== 'return-pump');
      return fc
        .array(fc.constantFrom(...possible, 'heater' as const, 'heater' as const, 'top-off' as const), {
          minLength: 1,
          maxLength: 5,
        })
        .chain((types) =>
          anySensors(
            tanks,
            types.map((_, at) => `item-${at}`),
            ground,
          ).chain((sensors) => withTheRest(key, { safeguards, tanks, types, sensors }, ground)),
        );
    }),
  );
}

type Bones = Pick<System, 'safeguards' | 'tanks' | 'sensors'> & { types: readonly EquipmentType[] };

function withTheRest(
  key: string,
  { safeguards, tanks, types, sensors }: Bones,
  ground: SiteGround,
): fc.Arbitrary<System> {
  const pumps = types.flatMap((type, at) => (type === 'return-pump' ? [`item-${at}`] : []));
  const proofs: PlanGround['proofs'] = pumps.length === 0 ? [] : ['command', ...provable(sensors, pumps)];
  const plan: PlanGround = { tanks: tanks.map((tank) => tank.key), sensors, safeguards, proofs };
  const item = (type: EquipmentType, at: number) =>
    fc
      .tuple(anyEquipment(`item-${at}`, type, tanks, ground), anyPlan(type, plan))
      .map(([one, its]) => ({ ...one, plan: its }));
  const whole: fc.Arbitrary<System> = fc.record({
    key: fc.constant(key),
    name: anyName(),
    kind: fc.constantFrom(...SYSTEM_KINDS),
    room: fc.constantFrom(...ground.rooms),
    salinity: anyFigure(0, 60),
    feedGPerDay: maybe(anyFigure(0, 1000)),
    feedProtein: maybe(anyFigure(0, 1)),
    fedAtH: maybe(fc.uniqueArray(fc.nat(23), { minLength: 1, maxLength: 5 })),
    ph: maybe(anyFigure(6, 9)),
    phScale: maybe(fc.constantFrom(...PH_SCALES)),
    alkalinityMmolL: maybe(anyFigure(0, 6)),
    tanks: fc.constant(tanks),
    equipment: fc.tuple(...types.map(item)),
    sensors: fc.constant(sensors),
    stock: anyStock(tanks, ground),
    safeguards: fc.constant(safeguards),
    alarms: anyAlarms(sensors, ground, safeguards),
    states: anyStates(safeguards),
    rates: maybe(anyRates(key, safeguards)),
    papers: maybe(anyPapers()),
  });
  return whole.map((system) => ({ ...system, alarms: system.alarms.filter(isOfItsStates(system)) }));
}

/** Whether an alarm is not of a state that the system does not know. */
function isOfItsStates({ states }: System): (alarm: System['alarms'][number]) => boolean {
  return ({ on }) => on.kind !== 'state-outstayed' || states.some(({ name }) => name === on.state);
}

function provable(sensors: readonly Sensor[], pumps: readonly string[]): ('flow' | 'watts')[] {
  const flow = sensors.some(({ quantity }) => quantity === 'flow');
  const watts = sensors.some(({ equipment }) => equipment !== undefined && pumps.includes(equipment));
  return [...(flow ? (['flow'] as const) : []), ...(watts ? (['watts'] as const) : [])];
}
