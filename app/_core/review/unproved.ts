import type { Facility } from '../facility/facility';
import type { Circuit } from '../facility/site';
import type { Equipment, System, Tank } from '../facility/system';

/**
 * Stands for the ledger of a protecting line that names none. No safeguard of a file can have this key, so it is a claim as
 * claimed and absent as tested, and a run can say that it acted.
 */
export const UNPROVED = '~';

/** A site and one of its systems with every protecting line leaning on some safeguard, if only on `UNPROVED`. */
export function withLedgers(facility: Facility, system: System): { facility: Facility; system: System } {
  return {
    facility: { ...facility, circuits: facility.circuits.map(backed) },
    system: { ...system, tanks: system.tanks.map(broken), equipment: system.equipment.map(locked) },
  };
}

function backed(circuit: Circuit): Circuit {
  return circuit.backedBy.includes('ups') ? { ...circuit, upsSafeguard: circuit.upsSafeguard ?? UNPROVED } : circuit;
}

function broken(tank: Tank): Tank {
  return tank.siphonBreakMm ? { ...tank, siphonSafeguard: tank.siphonSafeguard ?? UNPROVED } : tank;
}

function locked(equipment: Equipment): Equipment {
  const { plan } = equipment;
  const { regulation } = plan;
  const interlocks = plan.interlocks.map((line) => ({ ...line, safeguard: line.safeguard ?? UNPROVED }));
  const limited = regulation.kind === 'level' && regulation.runLimitMin !== undefined;
  return {
    ...equipment,
    plan: {
      ...plan,
      interlocks,
      regulation: limited ? { ...regulation, runLimitSafeguard: regulation.runLimitSafeguard ?? UNPROVED } : regulation,
    },
  };
}
