import type { System } from '../../../facility/system';
import { moversOf, PROPOSED, stocked, withSystem } from '../edit';
import type { Remedy } from '../remedy';

/** Circuits on which air or movement in a tank with animals hangs together with a return pump or a heater. */
function shared(system: System): string[] {
  const movers = stocked(system).flatMap(({ key }) => moversOf(system, key));
  const others = system.equipment.filter(({ type }) => type === 'return-pump' || type === 'heater');
  const both = movers.map(({ circuit }) => circuit).filter((key) => others.some(({ circuit }) => circuit === key));
  return [...new Set(both.filter((key) => key !== undefined))];
}

/** Air on a new circuit of its own, behind no shared RCD. */
export const remedy: Remedy = {
  id: 'split-circuits',
  changes: 'water',
  places: ({ circuits }, system) =>
    circuits
      .filter(({ key }) => shared(system).includes(key))
      .map(({ key, name }) => ({
        key,
        title: `Air and movement off ${name}, on a circuit of their own (a licensed electrician's work)`,
      })),
  apply: (facility, system, { key }) => {
    const old = facility.circuits.find((c) => c.key === key);
    if (!old) return facility;
    const { rcd: _, ...rest } = old;
    const fresh = { ...rest, key: `${PROPOSED}-${key}`, name: `Air apart from ${old.name}` };
    const movers = new Set(
      stocked(system)
        .flatMap((tank) => moversOf(system, tank.key))
        .map((e) => e.key),
    );
    const equipment = system.equipment.map((e) =>
      movers.has(e.key) && e.circuit === key ? { ...e, circuit: fresh.key } : e,
    );
    return { ...withSystem(facility, { ...system, equipment }), circuits: [...facility.circuits, fresh] };
  },
};
