import type { ResolvedDevice, ResolvedSystem, ResolvedTank } from '../equipment/resolved';
import { carbonAt } from '../water/carbonate-balance';
import { nbsAboveTotal } from '../water/ph-scales';
import { ALKALINITY_PER_NITROGEN, type Chemistry, constantsAt, isSalt, plainChemistry } from './chemistry';
import type { Follower } from './layout';
import type { Plant } from './plant';

/** mol/L of ions for each mol/m³ of alkalinity in fresh water: hard water has about one and a half times as many. */
const IONS_PER_ALKALINITY = 1.5e-3;
/** mol/L of ions in water of practical salinity 1. */
const IONS_PER_SALINITY = 0.0199;
const DAY = 86_400;

/** The chemistry of a run, with nothing wrong. */
export function buildChemistry(
  resolved: ResolvedSystem,
  tanks: readonly ResolvedTank[],
  carried: ReadonlySet<Follower>,
): Chemistry {
  const { chemistry: c, salinity } = resolved;
  const plain = plainChemistry(tanks.length, salinity);
  const made: Chemistry = {
    ...plain,
    ph: c.ph,
    ionicStrength: IONS_PER_ALKALINITY * c.alkalinity + IONS_PER_SALINITY * salinity,
    airCarbonDioxide: c.airCarbonDioxide,
    excretion: Float64Array.from(tanks, (t) => c.excretion.get(t.tank.key) ?? 0),
  };
  if (carried.has('alkalinity')) balance(resolved, tanks, carried, made);
  return made;
}

/**
 * What the everyday dose makes good is used up all day, by volume of the tanks: so in health alkalinity stays what it is. Half as much carbon
 * is built in with it, as in lime. Where nitrification takes more than is dosed, people's water changes make it good.
 */
function balance(
  resolved: ResolvedSystem,
  tanks: readonly ResolvedTank[],
  carried: ReadonlySet<Follower>,
  c: Chemistry,
): void {
  const dosed = resolved.devices.reduce((sum, d) => sum + dosedAllDay(d), 0);
  const nitrified = carried.has('ammonia') ? ALKALINITY_PER_NITROGEN * c.excretion.reduce((sum, n) => sum + n, 0) : 0;
  const whole = tanks.reduce((sum, t) => sum + t.volume, 0);
  for (const [k, tank] of tanks.entries()) {
    c.alkalinityUse[k] = ((dosed - nitrified) * tank.volume) / whole;
    c.carbonUse[k] = (Math.max(0, dosed) / 2 / whole) * tank.volume;
  }
}

/** mol/s that a doser gives on the mean of a day, where its plan says so by itself. */
function dosedAllDay({ equipment, flow, brings }: ResolvedDevice): number {
  if (equipment.type !== 'doser') return 0;
  const { regulation } = equipment.plan;
  if (regulation.kind === 'always') return flow * brings.alkalinity;
  if (regulation.kind !== 'hours') return 0;
  const span = (secondsOf(regulation.to) - secondsOf(regulation.from) + DAY) % DAY;
  return (flow * brings.alkalinity * (span === 0 ? DAY : span)) / DAY;
}

/** Seconds after midnight of "HH:MM". */
export function secondsOf(time: string): number {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  return hours * 3600 + minutes * 60;
}

/** What is dissolved in the water of a system that runs well, into a state; only what the plant carries. */
export function firstFollowers({ layout, nodes, chemistry }: Plant, resolved: ResolvedSystem, x: Float64Array): void {
  const { temperature, salinity } = resolved;
  const { ammonia, alkalinity } = resolved.chemistry;
  const fill = (name: Follower, value: () => number) => {
    const from = layout.followers[name];
    if (from >= 0) x.fill(value(), from, from + nodes);
  };
  fill('ammonia', () => ammonia);
  fill('alkalinity', () => alkalinity);
  fill('carbon', () => {
    const above = isSalt(chemistry) ? nbsAboveTotal(temperature, salinity) : 0;
    return carbonAt(constantsAt(chemistry, temperature, salinity), alkalinity, chemistry.ph - above);
  });
}
