import 'server-only';
import { z } from 'zod';
import type { Plan } from '#core/plans/plan';
import { ok, type Result, refused } from '#core/result';
import { addStatuses, addVersions } from '#data/plans/add';
import { planShape } from '#shape/facility/plan';
import { planDraft } from '#shape/plans/plan-place';
import { readPlan } from '#shape/plans/read-plan';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { type Changed, changePlan, type Held, type PlanChanged } from './change-plan';
import { misfits } from './with-plan';

export const writePlanShape = planDraft;

/** Writes a draft of a plan. The author's own earlier draft, if there is one, is withdrawn for it. */
export async function writePlan(
  who: Who,
  { plan: text, reason, latest, ...address }: z.output<typeof writePlanShape>,
): Promise<Result<PlanChanged, Refusal>> {
  const read = readPlan(text);
  if (!read.ok) return refused({ why: 'invalid', faults: read.reason });
  // Whether it stands on its author's word alone is decided when it is put into force.
  const { ownWord: _, ...plan } = read.value;
  return await changePlan(
    who,
    'write-plan',
    address,
    async (held) => await writeDraft(who, held, plan, reason, latest),
  );
}

async function writeDraft(
  who: Who,
  held: Held,
  plan: Plan,
  reason: string,
  latest: number,
): Promise<Result<Changed, Refusal>> {
  const { tx, at, entry, equipmentId, facility, system, equipment, versions } = held;
  const known = versions[0]?.version ?? 0;
  if (known !== latest)
    return refused({ why: 'conflict', now: `Meanwhile somebody wrote version ${known}: look at it first.` });
  const faults = misfits(facility, system.key, equipment.key, plan);
  if (faults.length > 0) return refused({ why: 'invalid', faults });
  const version = known + 1;
  const body = z.encode(planShape, plan);
  const older = versions.filter((one) => one.status === 'draft' && one.writtenBy === who.id);
  const author = { by: who.id, reason };
  await addVersions(tx, entry.id, [{ equipmentId, version, body }], author, at);
  await addStatuses(tx, entry.id, [{ equipmentId, version }], 'draft', author, at);
  const replaced = older.map((one) => ({ equipmentId, version: one.version }));
  await addStatuses(
    tx,
    entry.id,
    replaced,
    'withdrawn',
    { by: who.id, reason: `written anew as version ${version}` },
    at,
  );
  const of = { by: who.id, equipment: equipmentId };
  return ok({
    version,
    entries: [
      { kind: 'plan-drafted', body: { ...of, version, reason, plan: body } },
      ...older.map((one) => ({ kind: 'plan-withdrawn', body: { ...of, version: one.version, for: version } })),
    ],
  });
}
