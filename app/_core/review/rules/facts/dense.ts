import type { ResolvedSystem } from '../../../equipment/resolved';
import { hypoxiaTime } from '../../../water/hypoxia-time';
import { oxygenSaturation } from '../../../water/oxygen-saturation';
import { respirationFactor } from '../../../water/respiration';

/**
 * How soon the animals of each tank would breathe its water down to a level if nothing brought oxygen, s. Bacteria and
 * the water's surface are left out; the animals alone decide whether a tank is densely stocked.
 * @param temperature °C the water is kept at
 * @param limit g/m³ of oxygen, the limit of harm
 */
export function breathedDown(
  numbers: ResolvedSystem,
  temperature: number,
  limit: number,
): { tank: string; afterS: number }[] {
  const full = oxygenSaturation(temperature, numbers.salinity, numbers.pressureAtm);
  const faster = respirationFactor(temperature);
  return [...numbers.respiration].flatMap(([key, atReference]) => {
    const found = numbers.tanks.find(({ tank }) => tank.key === key);
    if (found === undefined) return [];
    const demand = (atReference * faster) / found.volume;
    return [{ tank: found.tank.name, afterS: hypoxiaTime(full, limit, full, 0, demand) }];
  });
}
