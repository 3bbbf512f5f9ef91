import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import type { CaseThing } from '#core/review/result';

/** What a fault under view strikes, by key. */
export interface Struck {
  /** The thing that fails. */
  thing: CaseThing | null;
  equipment: ReadonlySet<string>;
  circuits: ReadonlySet<string>;
}

/** What of a drawing a fault takes with it: the thing itself, and everything on a circuit that goes dead. */
export function struckBy(facility: Facility, system: System, thing: CaseThing | null): Struck {
  const circuits = new Set(facility.circuits.filter((c) => isDead(thing, c)).map((c) => c.key));
  const equipment = new Set(
    system.equipment
      .filter(
        (e) =>
          (thing?.kind === 'equipment' && e.key === thing.key) || (e.circuit !== undefined && circuits.has(e.circuit)),
      )
      .map((e) => e.key),
  );
  return { thing, equipment, circuits };
}

function isDead(thing: CaseThing | null, circuit: Facility['circuits'][number]): boolean {
  switch (thing?.kind) {
    case 'circuit':
      return circuit.key === thing.key;
    case 'rcd':
      return circuit.rcd === thing.key;
    case 'site':
      return circuit.backedBy.length === 0;
    default:
      return false;
  }
}
