import type { Facility } from '#core/facility/facility';
import type { Circuit } from '#core/facility/site';
import type { Equipment, System } from '#core/facility/system';
import type { CaseThing, FaultCase } from '#core/review/result';

/** The fault under view. */
export type FaultInView = Pick<FaultCase, 'fault' | 'thing'>;

/** What a fault under view strikes, by key. */
export interface Struck {
  /** The thing that fails. */
  thing: CaseThing | null;
  equipment: ReadonlySet<string>;
  circuits: ReadonlySet<string>;
}

/** What of a drawing a fault takes with it: the thing itself, what hangs on a dead circuit, what a state keeps off. */
export function struckBy(facility: Facility, system: System, fault: FaultInView | null): Struck {
  if (!fault) return { thing: null, equipment: new Set(), circuits: new Set() };
  const circuits = new Set(facility.circuits.filter((c) => isDead(fault, c)).map((c) => c.key));
  const struck = system.equipment.filter(
    (e) => isStruck(fault, e) || (e.circuit !== undefined && circuits.has(e.circuit)),
  );
  return { thing: fault.thing, equipment: new Set(struck.map((e) => e.key)), circuits };
}

function isStruck({ thing }: FaultInView, equipment: Equipment): boolean {
  if (thing.kind === 'equipment') return equipment.key === thing.key;
  return (
    thing.kind === 'state' && equipment.plan.states.some((line) => line.state === thing.key && line.then === 'off')
  );
}

function isDead({ fault, thing }: FaultInView, circuit: Circuit): boolean {
  switch (thing.kind) {
    case 'circuit':
      return circuit.key === thing.key;
    case 'rcd':
      return circuit.rcd === thing.key;
    case 'site':
      if (!fault.startsWith('utility-fails')) return false;
      // The utility fails: a generator that does not start carries nothing.
      return circuit.backedBy.every((by) => by === 'generator' && fault === 'utility-fails-no-generator');
    case 'equipment':
    case 'sensor':
    case 'tank':
    case 'state':
    case 'gateway':
    case 'system':
    case 'room':
    case 'matter':
      return false;
  }
}
