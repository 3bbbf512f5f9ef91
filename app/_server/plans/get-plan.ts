import 'server-only';
import type { z } from 'zod';
import type { Facility } from '#core/facility/facility';
import type { Equipment, System } from '#core/facility/system';
import type { Plan } from '#core/plans/plan';
import { ok, type Result } from '#core/result';
import { accountNames } from '#data/accounts/names';
import type { PlanStatusName } from '#data/plans/add';
import { listVersions, type StoredVersion } from '#data/plans/versions';
import { piecePlace } from '#shape/plans/plan-place';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { findPiece } from './find-piece';
import { isSoleKeeper } from './sole-keeper';

export const getPlanShape = piecePlace;

/** Something that a version came to be; `sent-back` is a withdrawal by somebody else than its author. */
export interface PlanEvent {
  status: PlanStatusName | 'sent-back';
  at: Date;
  /** Name of who did it; null for what is older than accounts. */
  by: string | null;
  reason: string | null;
}

/** One version of a plan, for people. */
export interface PlanVersionPage {
  version: number;
  plan: Plan;
  status: PlanEvent['status'];
  writtenAt: Date;
  writtenBy: string | null;
  /** Whether the person who asks wrote it. */
  isOwn: boolean;
  reason: string | null;
  life: PlanEvent[];
}

/** The plan of a piece of equipment with all its versions. */
export interface PlanPage {
  site: { key: string; name: string; zone: string };
  facility: Facility;
  system: System;
  equipment: Equipment;
  /** The latest first. */
  versions: PlanVersionPage[];
  mayWrite: boolean;
  mayApprove: boolean;
  /** Nobody else may put a plan of this site into force. */
  isSoleKeeper: boolean;
}

/** The plan of a piece of equipment: what is in force, what waits, what was before. */
export async function getPlan(who: Who, address: z.output<typeof getPlanShape>): Promise<Result<PlanPage, Refusal>> {
  const piece = await findPiece(who, address);
  if (!piece.ok) return piece;
  const { entry, stored, system, equipment, equipmentId } = piece.value;
  const mayApprove = may(who, 'approve-plan', entry.key);
  const [versions, isSole] = await Promise.all([
    listVersions(entry.id, equipmentId),
    mayApprove ? isSoleKeeper(undefined, entry.id, who) : false,
  ]);
  const ids = versions.flatMap(({ writtenBy, life }) => [writtenBy, ...life.map(({ by }) => by)]);
  const names = await accountNames(ids.filter((id) => id !== null));
  return ok({
    site: { key: entry.key, name: entry.name, zone: entry.zone },
    facility: stored.facility,
    system,
    equipment,
    versions: versions.map((one) => versionPage(one, names, who)),
    mayWrite: may(who, 'write-plan', entry.key),
    mayApprove,
    isSoleKeeper: isSole,
  });
}

function versionPage(stored: StoredVersion, names: ReadonlyMap<string, string>, who: Who): PlanVersionPage {
  const { version, plan, writtenAt, writtenBy, reason } = stored;
  const named = (id: string | null) => (id === null ? null : (names.get(id) ?? null));
  const life = stored.life.map(
    ({ status, at, by, ...rest }): PlanEvent => ({
      ...rest,
      at,
      by: named(by),
      status: status === 'withdrawn' && by !== writtenBy ? 'sent-back' : status,
    }),
  );
  return {
    version,
    plan,
    status: life.at(-1)?.status ?? stored.status,
    writtenAt,
    writtenBy: named(writtenBy),
    isOwn: writtenBy === who.id,
    reason,
    life,
  };
}
