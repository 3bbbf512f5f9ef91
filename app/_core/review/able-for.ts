import type { EquipmentType, System } from '../facility/system';
import { ableTo } from '../rota/able';
import type { Able } from '../rota/cover';
import type { Context } from './context';
import type { Subject } from './trial';

/** The type of the equipment whose repair puts a fault right; null where it is other work. */
export function typeToMend({ equipment }: Pick<System, 'equipment'>, { fault, thing }: Subject): EquipmentType | null {
  if (fault.repair !== 'equipment') return null;
  return equipment.find(({ key }) => key === thing.key)?.type ?? null;
}

/** Who can put a fault right; null where everybody can. */
export function ableFor(
  { facility, system, on }: Pick<Context, 'facility' | 'system' | 'on'>,
  subject: Subject,
): Able | null {
  return ableTo(facility, typeToMend(system, subject), on);
}
