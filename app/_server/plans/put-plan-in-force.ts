import 'server-only';
import { z } from 'zod';
import type { Plan } from '#core/plans/plan';
import { ok, type Result, refused } from '#core/result';
import { addStatuses, addVersions } from '#data/plans/add';
import type { StoredVersion } from '#data/plans/versions';
import { countRevision } from '#data/sites';
import { planShape } from '#shape/facility/plan';
import { planApproval } from '#shape/plans/plan-place';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { askForReviews } from '../reviews/ask-for-reviews';
import { type Changed, changePlan, type Held, type PlanChanged, still } from './change-plan';
import { isSoleKeeper } from './sole-keeper';
import { misfits } from './with-plan';

export const putPlanInForceShape = planApproval;

/**
 * Puts a submitted plan into force in the place of the one before, which is superseded, and calls for reviews. Somebody
 * else than its author does; where there is nobody else, its author may with a reason, and the plan then says so.
 */
export async function putPlanInForce(
  who: Who,
  { version, inForce, why, ...address }: z.output<typeof putPlanInForceShape>,
): Promise<Result<PlanChanged, Refusal>> {
  return await changePlan(who, 'approve-plan', address, async (held) => {
    const submitted = still(held.versions, version, 'submitted');
    if (!submitted.ok) return submitted;
    const before = held.versions.find(({ status }) => status === 'in-force');
    if (before?.version !== inForce)
      return refused({
        why: 'conflict',
        now: `Version ${before?.version} came into force meanwhile: look at the difference again.`,
      });
    const faults = misfits(held.facility, address.system, address.equipment, submitted.value.plan);
    if (faults.length > 0) return refused({ why: 'invalid', faults });
    if (submitted.value.writtenBy !== who.id) return ok(await putIn(who, held, submitted.value, before));
    if (!(await isSoleKeeper(held.tx, held.entry.id, who))) return refused({ why: 'own-work' });
    if (why === undefined)
      return refused({ why: 'invalid', faults: [{ path: 'why', message: 'must say why it cannot wait' }] });
    return ok(await putInOnOwnWord(who, held, submitted.value, before, why));
  });
}

/** Makes a version the one in force. */
async function putIn(
  who: Who,
  held: Held,
  { version, plan }: Pick<StoredVersion, 'version' | 'plan'>,
  before: StoredVersion,
): Promise<Changed> {
  const { tx, at, entry, equipmentId } = held;
  const author = { by: who.id, reason: plan.ownWord?.why ?? null };
  await addStatuses(tx, entry.id, [{ equipmentId, version }], 'in-force', author, at);
  await addStatuses(tx, entry.id, [{ equipmentId, version: before.version }], 'superseded', author, at);
  const revision = await countRevision(tx, entry.id);
  await askForReviews(tx, entry, at);
  const body = {
    by: who.id,
    equipment: equipmentId,
    version,
    supersedes: before.version,
    revision,
    plan: z.encode(planShape, plan),
  };
  return { version, entries: [{ kind: 'plan-in-force', body }] };
}

/** Writes the plan once more, with what it stands on, and makes that version the one in force. */
async function putInOnOwnWord(
  who: Who,
  held: Held,
  submitted: StoredVersion,
  before: StoredVersion,
  why: string,
): Promise<Changed> {
  const { tx, at, entry, equipmentId, versions } = held;
  const version = (versions[0]?.version ?? 0) + 1;
  const plan: Plan = { ...submitted.plan, ownWord: { why } };
  const body = z.encode(planShape, plan);
  await addVersions(tx, entry.id, [{ equipmentId, version, body }], { by: who.id, reason: submitted.reason }, at);
  const moved = { by: who.id, reason: `put into force as version ${version}` };
  await addStatuses(tx, entry.id, [{ equipmentId, version: submitted.version }], 'withdrawn', moved, at);
  const done = await putIn(who, held, { version, plan }, before);
  const left = { by: who.id, equipment: equipmentId, version: submitted.version, for: version };
  return { ...done, entries: [{ kind: 'plan-withdrawn', body: left }, ...done.entries] };
}
