import 'server-only';
import type { Equipment } from '#core/facility/system';
import { ok, type Result, refused } from '#core/result';
import { findEquipmentId } from '#data/plans/pieces';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { findPlace, type Place } from '../reviews/find-place';

/** Address of a piece of equipment. */
export interface PieceAddress {
  site: string;
  system: string;
  equipment: string;
}

/** A piece of equipment in its system, as stored. */
export interface Piece extends Place {
  equipment: Equipment;
  equipmentId: string;
}

/** Finds a piece of equipment for somebody. What they may not see is not found. */
export async function findPiece(who: Who, address: PieceAddress): Promise<Result<Piece, Refusal>> {
  const place = await findPlace(who, address.site, address.system);
  if (!place.ok) return place;
  const { entry, system, systemId } = place.value;
  const equipment = system.equipment.find(({ key }) => key === address.equipment);
  const equipmentId = await findEquipmentId(entry.id, systemId, address.equipment);
  if (!(equipment && equipmentId)) return refused({ why: 'not-found', what: 'piece of equipment' });
  return ok({ ...place.value, equipment, equipmentId });
}
