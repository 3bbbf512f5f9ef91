import type { ResolvedSystem } from '../equipment/resolved';
import type { ToleranceProfile } from '../facility/stock';
import type { ProfileOf } from '../simulate/build-limits';
import { nodeTanks } from '../simulate/build-plant';
import type { Nominal } from '../simulate/nominal';
import { OXYGEN, SALT, STRIDE, VOLUME } from '../simulate/plant';
import { density } from '../water/density';

/**
 * How far beyond what a system does every day somebody tells a reading from yesterday's: K, practical salinity, mg/L.
 * Common practice, no source.
 */
const TOLD_APART = { temperature: 0.5, salinity: 0.5, oxygen: 0.3 };

/**
 * Profiles as people on a round use them: what they find usual reaches at least as far as the healthy system goes in a day.
 * Water that always stands a little beside the profile's band is no sign of a fault. Limits of harm stay as they are.
 */
export function usualOf(profileOf: ProfileOf, resolved: ResolvedSystem, nominal: Nominal): ProfileOf {
  const nodes = nodeTanks(resolved).map((t) => t.tank.key);
  const perKg = 1000 / density(resolved.temperature, resolved.salinity);
  const found = new Map<string, ToleranceProfile>();
  return (stock) => {
    const profile = profileOf(stock);
    const node = nodes.indexOf(stock.tank);
    if (node < 0) return profile;
    const id = `${stock.tank}/${profile.key}`;
    const made = found.get(id) ?? stretched(profile, nominal, node, perKg);
    found.set(id, made);
    return made;
  };
}

function stretched(profile: ToleranceProfile, nominal: Nominal, node: number, perKg: number): ToleranceProfile {
  const at = STRIDE * node;
  const day = Array.from({ length: 24 }, (_, hour) => nominal.at(hour).x);
  const salinities = day.map((x) => (perKg * (x[at + SALT] ?? 0)) / (x[at + VOLUME] ?? 1));
  const { temperatureC, salinity, oxygenMgL } = profile.usual;
  return {
    ...profile,
    usual: {
      temperatureC: wider(
        temperatureC,
        [nominal.dayLow[node] ?? 0, nominal.dayHigh[node] ?? 0],
        TOLD_APART.temperature,
      ),
      salinity: wider(salinity, salinities, TOLD_APART.salinity),
      oxygenMgL: Math.min(oxygenMgL, ...day.map((x) => (x[at + OXYGEN] ?? 0) - TOLD_APART.oxygen)),
    },
  };
}

function wider([low, high]: [number, number], values: readonly number[], by: number): [number, number] {
  return [Math.min(low, ...values.map((v) => v - by)), Math.max(high, ...values.map((v) => v + by))];
}
