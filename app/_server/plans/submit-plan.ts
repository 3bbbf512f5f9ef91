import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { addStatuses } from '#data/plans/add';
import { versionPlace } from '#shape/plans/plan-place';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { changePlan, type PlanChanged, still } from './change-plan';
import { misfits } from './with-plan';

export const submitPlanShape = versionPlace;

/** Submits a draft, so that somebody else may put it into force. Only its author does. */
export async function submitPlan(
  who: Who,
  { version, ...address }: z.output<typeof submitPlanShape>,
): Promise<Result<PlanChanged, Refusal>> {
  return await changePlan(who, 'write-plan', address, async ({ tx, at, entry, equipmentId, facility, versions }) => {
    const draft = still(versions, version, 'draft');
    if (!draft.ok) return draft;
    if (draft.value.writtenBy !== who.id) return refused({ why: 'not-own-work' });
    // What it names may have gone since it was written.
    const faults = misfits(facility, address.system, address.equipment, draft.value.plan);
    if (faults.length > 0) return refused({ why: 'invalid', faults });
    await addStatuses(tx, entry.id, [{ equipmentId, version }], 'submitted', { by: who.id, reason: null }, at);
    return ok({
      version,
      entries: [{ kind: 'plan-submitted', body: { by: who.id, equipment: equipmentId, version } }],
    });
  });
}
