import type { Facility } from '../facility/facility';
import type { System } from '../facility/system';
import { defaultProfile } from '../facility/profiles';
import type { LimitQuantity, Limit } from '../facility/stock';
import { HALF_AMMONIA, nitrifyingFactor } from '../simulate/nitrify';
import type { Follower } from '../simulate/layout';
import { unionisedShare } from '../water/unionised-ammonia';
import { DEFAULTS, scaled } from './defaults';
import type { ResolvedChemistry, ResolvedDevice } from './resolved';
import { resolveMeals } from './resolve-meals';
import { LESS, MORE, take, type Taker, taker } from './take';

const DAY = 86_400;
const HORIZON_DAYS = 7;
/** °C up to which the greatest share of un-ionised ammonia is looked for. */
const HOT = 35;
/** Salinity from which the defaults of sea water stand for pH and alkalinity. */
const SALTY = 5;

/** What the rest of a system has been resolved to, as far as its chemistry depends on it. */
export interface ForChemistry {
  salinity: number;
  temperature: number;
  devices: readonly ResolvedDevice[];
  /** kg of animals by tank key. */
  mass: ReadonlyMap<string, number>;
  /** m³ by key of the tanks that hold system water. */
  volumes: ReadonlyMap<string, number>;
}

/**
 * What dissolves in a system's water besides salt and oxygen, and which of it can matter. Figures of what cannot are not listed
 * among the inputs.
 */
export function resolveChemistry(t: Taker, facility: Facility, system: System, rest: ForChemistry): ResolvedChemistry {
  const quiet = figuresOf(taker(t.side, t.only), facility, system, rest);
  const carried = carriedBy(facility, system, rest, quiet);
  if (carried.has('ammonia') || carried.has('alkalinity')) figuresOf(t, facility, system, rest, carried);
  if (carried.has('oxidant') && system.equipment.some((e) => e.source === 'mains')) mainsOxidant(t, facility);
  return { ...quiet, carried, ammoniaNear: nearOf(facility, system, rest, quiet.ph) };
}

/** Part of a limit from which it counts as near. */
const NEAR = 1 / 3;

/** g/m³ of total ammonia at which hot water at the worst pH comes near the least limit. */
function nearOf(facility: Facility, system: System, { salinity }: ForChemistry, ph: number): number {
  return (NEAR * least(limitsOf(facility, system), 'ammonia')) / unionisedShare(ph, 'nbs', HOT, salinity);
}

type Figures = Omit<ResolvedChemistry, 'carried' | 'ammoniaNear'>;

function figuresOf(
  t: Taker,
  facility: Facility,
  system: System,
  rest: ForChemistry,
  only?: ReadonlySet<Follower>,
): Figures {
  const at = (field: string) => `systems/${system.key}/${field}`;
  const sea = rest.salinity >= SALTY;
  const nitrogen = only === undefined || only.has('ammonia');
  const carbon = only === undefined || only.has('carbon');
  const muted = taker(t.side, t.only);
  const of = (wanted: boolean) => (wanted ? t : muted);
  const ph = take(
    of(nitrogen || carbon),
    at('ph'),
    'worst pH of a day',
    system.ph,
    MORE,
    sea ? DEFAULTS.phMarine : DEFAULTS.phFresh,
  );
  const alkalinity = take(
    of(carbon),
    at('alkalinityMmolL'),
    'alkalinity',
    system.alkalinityMmolL,
    LESS,
    sea ? DEFAULTS.alkalinityMarine : DEFAULTS.alkalinityFresh,
  );
  return {
    ph,
    alkalinity,
    airCarbonDioxide: take(
      of(carbon),
      at('airCarbonDioxide'),
      'carbon dioxide in the air of the room',
      undefined,
      MORE,
      DEFAULTS.airCarbonDioxide,
    ),
    ...nitrogenOf(of(nitrogen), system, rest, at, livingAmmonia(facility, system, rest, ph)),
    meals: resolveMeals(of(nitrogen), system),
    mainsOxidant: mainsOxidant(muted, facility),
  };
}

function mainsOxidant(t: Taker, facility: Facility): number {
  return take(
    t,
    'site/mains/oxidantMgL',
    'disinfectant of the mains',
    facility.site.mains?.oxidantMgL,
    MORE,
    DEFAULTS.mainsOxidantMgL,
  );
}

/**
 * g/m³ of total ammonia that healthy water stands at most at: animals that live in it tell that it is well below their limit.
 * So whatever a range would allow, nothing is taken for a filter in whose water they could not have lived until today.
 */
function livingAmmonia(facility: Facility, system: System, rest: ForChemistry, ph: number): number {
  const share = unionisedShare(ph, 'nbs', rest.temperature, rest.salinity);
  return (NEAR * least(limitsOf(facility, system), 'ammonia')) / share;
}

function nitrogenOf(t: Taker, system: System, rest: ForChemistry, at: (field: string) => string, living: number) {
  const mass = [...rest.mass.values()].reduce((sum, kg) => sum + kg, 0);
  const feed = take(
    t,
    at('feedGPerDay'),
    'feed given in a day',
    system.feedGPerDay,
    MORE,
    scaled(DEFAULTS.feedShare, 1000 * mass, 'g'),
  );
  const protein = take(t, at('feedProtein'), 'protein in the feed', system.feedProtein, MORE, DEFAULTS.feedProtein);
  const each = take(t, at('nitrogenPerProtein'), 'nitrogen given off', undefined, MORE, DEFAULTS.nitrogenPerProtein);
  const nitrogenPerFeed = protein * each;
  const excretion = new Map<string, number>();
  const whole = (feed * nitrogenPerFeed) / DAY;
  for (const [tank, kg] of rest.mass) if (mass > 0) excretion.set(tank, (whole * kg) / mass);
  // Feed is given where animals are; with none described, it is spread over the water.
  if (mass === 0) {
    const water = [...rest.volumes.values()].reduce((sum, v) => sum + v, 0);
    for (const [tank, v] of rest.volumes) excretion.set(tank, (whole * v) / water);
  }
  const factor = take(
    t,
    at('nitrifyingFactor'),
    'what its bacteria could turn over, in daily feeds',
    undefined,
    LESS,
    DEFAULTS.nitrifyingFactor,
  );
  const least = Math.min(DEFAULTS.nitrifyingFactor.value, 1 + HALF_AMMONIA / living);
  const spare = Math.max(factor, least);
  const usual = (whole * spare) / nitrifyingFactor(rest.temperature);
  return {
    nitrogenPerFeed,
    feedOxygen: take(t, at('feedOxygen'), 'oxygen that feed takes within a day', undefined, MORE, DEFAULTS.feedOxygen),
    excretion,
    nitrifying: usual,
    surfacesShare: take(
      t,
      at('surfacesShare'),
      'part of its bacteria on stone and walls',
      undefined,
      LESS,
      DEFAULTS.surfacesShare,
    ),
    ammonia: spare > 1 ? HALF_AMMONIA / (spare - 1) : HALF_AMMONIA,
  };
}

/** Which dissolved substances can reach a limit of the animals or are read by something that acts. */
function carriedBy(facility: Facility, system: System, rest: ForChemistry, f: Figures): Set<Follower> {
  const carried = new Set<Follower>();
  const limits = limitsOf(facility, system);
  if (f.excretion.size > 0 && (isRead(system, 'ammonia') || worstAmmonia(system, rest, f) >= least(limits, 'ammonia')))
    carried.add('ammonia');
  const moved = system.equipment.some((e) => e.type === 'co2' || (e.type === 'doser' && e.dosesMmolPerL !== undefined));
  if (moved) {
    carried.add('alkalinity');
    carried.add('carbon');
  }
  const dosed = system.equipment.some((e) => e.type === 'ozone' || e.source === 'mains');
  if (dosed && (isRead(system, 'oxidant') || limits.some((l) => l.quantity === 'oxidant'))) carried.add('oxidant');
  return carried;
}

function limitsOf(facility: Facility, system: System): Limit[] {
  const profiles = new Map(facility.profiles.map((p) => [p.key, p]));
  return system.stock.flatMap(
    ({ profile }) =>
      ((profile === undefined ? undefined : profiles.get(profile)) ?? defaultProfile(system.kind)).limits,
  );
}

function least(limits: readonly Limit[], quantity: LimitQuantity): number {
  const above = limits.filter((l) => l.quantity === quantity).map((l) => l.above ?? Number.POSITIVE_INFINITY);
  return Math.min(Number.POSITIVE_INFINITY, ...above);
}

/** Whether an alarm or an interlock reads a sensor of a quantity. */
function isRead(system: System, quantity: 'ammonia' | 'oxidant'): boolean {
  const of = new Set(system.sensors.filter((s) => s.quantity === quantity).map((s) => s.key));
  return (
    system.alarms.some(({ on }) => on.kind === 'sensor' && of.has(on.sensor)) ||
    system.equipment.some(({ plan }) =>
      plan.interlocks.some(({ when }) => when.kind === 'sensor' && of.has(when.sensor)),
    )
  );
}

/** g/m³ of un-ionised ammonia at most: all that is given off in a week and out of a full hopper, none turned over, hot, at the worst pH. */
function worstAmmonia(system: System, rest: ForChemistry, f: Figures): number {
  const hoppers = system.equipment.reduce((sum, e) => sum + (e.hopperG?.high ?? e.hopperG?.value ?? 0), 0);
  const share = unionisedShare(f.ph, 'nbs', HOT, rest.salinity);
  const inTanks = [...f.excretion].map(([tank, gPerS]) => {
    const volume = rest.volumes.get(tank) ?? Number.POSITIVE_INFINITY;
    return f.ammonia + (gPerS * DAY * HORIZON_DAYS + hoppers * f.nitrogenPerFeed) / volume;
  });
  return share * Math.max(0, ...inTanks);
}
