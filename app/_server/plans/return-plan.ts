import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { addStatuses } from '#data/plans/add';
import { versionReason } from '#shape/plans/plan-place';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { changePlan, type PlanChanged, still } from './change-plan';

export const sendBackPlanShape = versionReason;
export const withdrawPlanShape = versionReason;

/** Sends a submitted plan back to its author, with a reason. It stays as it was written; a further version follows it. */
export async function sendBackPlan(
  who: Who,
  { version, reason, ...address }: z.output<typeof sendBackPlanShape>,
): Promise<Result<PlanChanged, Refusal>> {
  return await changePlan(who, 'approve-plan', address, async ({ tx, at, entry, equipmentId, versions }) => {
    const submitted = still(versions, version, 'submitted');
    if (!submitted.ok) return submitted;
    if (submitted.value.writtenBy === who.id) return refused({ why: 'own-work' });
    await addStatuses(tx, entry.id, [{ equipmentId, version }], 'withdrawn', { by: who.id, reason }, at);
    const body = { by: who.id, equipment: equipmentId, version, reason };
    return ok({ version, entries: [{ kind: 'plan-sent-back', body }] });
  });
}

/** Withdraws one's own draft or submitted plan, with a reason. */
export async function withdrawPlan(
  who: Who,
  { version, reason, ...address }: z.output<typeof withdrawPlanShape>,
): Promise<Result<PlanChanged, Refusal>> {
  return await changePlan(who, 'write-plan', address, async ({ tx, at, entry, equipmentId, versions }) => {
    const isDraft = versions.some((one) => one.version === version && one.status === 'draft');
    const open = still(versions, version, isDraft ? 'draft' : 'submitted');
    if (!open.ok) return open;
    if (open.value.writtenBy !== who.id) return refused({ why: 'not-own-work' });
    await addStatuses(tx, entry.id, [{ equipmentId, version }], 'withdrawn', { by: who.id, reason }, at);
    const body = { by: who.id, equipment: equipmentId, version, reason };
    return ok({ version, entries: [{ kind: 'plan-withdrawn', body }] });
  });
}
