import 'server-only';
import type { Facility } from '#core/facility/facility';
import { isOff } from '#core/plans/credit';

/** Safeguards that are out of service on a day, by the key of their system; null for those of the site. */
export function whatIsOff(
  facility: Facility,
  today: string,
): (system: string | null) => { name: string; until: string }[] {
  return (key) => {
    const owner = key === null ? facility : facility.systems.find((system) => system.key === key);
    const off = owner?.safeguards.filter((safeguard) => isOff(safeguard, today)) ?? [];
    return off.map((safeguard) => ({ name: safeguard.name, until: safeguard.off?.until ?? today }));
  };
}
