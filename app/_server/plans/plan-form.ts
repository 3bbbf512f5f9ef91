import 'server-only';
import { z } from 'zod';
import type { Facility } from '#core/facility/facility';
import type { Equipment, System } from '#core/facility/system';
import type { DraftGroup, Field } from '#core/forms/field';
import type { Plan, Regulation } from '#core/plans/plan';
import { ok, type Result, refused } from '#core/result';
import type { Custom } from '#core/units/shown';
import { listVersions } from '#data/plans/versions';
import { planShape } from '#shape/facility/plan';
import { draftOf } from '#shape/form/draft-of';
import { readDraft } from '#shape/form/read-draft';
import { planForm, typedPlan } from '#shape/plans/plan-place';
import { formOf } from '../describe/form-of';
import { formMessage } from '../describe/form-message';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import type { PlanChanged } from './change-plan';
import { findPiece } from './find-piece';
import { writePlan } from './write-plan';

export const planFormShape = planForm;
export const writeTypedPlanShape = typedPlan;

/** The form for the next version of a plan. */
export interface PlanForm {
  site: { key: string; name: string };
  system: { key: string; name: string };
  equipment: { key: string; name: string };
  fields: Field[];
  draft: DraftGroup;
  /** The version it begins from. */
  from: number;
  /** The latest version there is. */
  latest: number;
}

/** Kinds of regulation that only some types of equipment can follow. */
const FOLLOWS: Partial<Record<Regulation['kind'], readonly Equipment['type'][]>> = {
  thermostat: ['heater', 'chiller'],
  level: ['top-off'],
};

/** The form for the next version of a plan: as the version it begins from says, or else the one in force. */
export async function getPlanForm(
  who: Who,
  { from, units, ...address }: z.output<typeof planFormShape>,
): Promise<Result<PlanForm, Refusal>> {
  const piece = await findPiece(who, address);
  if (!piece.ok) return piece;
  const { entry, stored, system, equipment, equipmentId } = piece.value;
  if (!may(who, 'write-plan', entry.key)) return refused({ why: 'not-allowed' });
  const versions = await listVersions(entry.id, equipmentId);
  const begun = versions.find(({ version, status }) => (from === undefined ? status === 'in-force' : version === from));
  if (!begun) return refused({ why: 'not-found', what: 'version' });
  const fields = fieldsFor(stored.facility, system, equipment, units);
  return ok({
    site: { key: entry.key, name: entry.name },
    system: { key: system.key, name: system.name },
    equipment: { key: equipment.key, name: equipment.name },
    fields,
    draft: draftOf(fields, heldOf(begun.plan), units),
    from: begun.version,
    latest: versions[0]?.version ?? 0,
  });
}

/** Writes a draft of a plan as it was typed into its form. What nobody touched stays exactly as it was. */
export async function writeTypedPlan(
  who: Who,
  { from, units, draft, reason, latest, ...address }: z.output<typeof writeTypedPlanShape>,
): Promise<Result<PlanChanged, Refusal>> {
  const piece = await findPiece(who, address);
  if (!piece.ok) return piece;
  const { entry, stored, system, equipment, equipmentId } = piece.value;
  if (!may(who, 'write-plan', entry.key)) return refused({ why: 'not-allowed' });
  const begun = (await listVersions(entry.id, equipmentId)).find(({ version }) => version === from);
  if (!begun) return refused({ why: 'not-found', what: 'version' });
  const fields = fieldsFor(stored.facility, system, equipment, units);
  const held = heldOf(begun.plan);
  const typed = readDraft(fields, draft, units, { draft: draftOf(fields, held, units), held });
  const done = await writePlan(who, { ...address, plan: JSON.stringify(typed), reason, latest });
  return done.ok ? done : refused(inForm(done.reason));
}

function heldOf(plan: Plan): Record<string, unknown> {
  const { ownWord: _, ...held } = z.encode(planShape, plan);
  return held;
}

/** The fields of a plan: its layers in their order, regulation only by what the equipment can follow. */
function fieldsFor(facility: Facility, system: System, { type }: Equipment, custom: Custom): Field[] {
  const can = (kind: string) => FOLLOWS[kind as Regulation['kind']]?.includes(type) ?? true;
  return formOf(planShape, { facility, system, custom }).flatMap((field) => {
    if (field.name === 'ownWord') return [];
    if (field.name !== 'regulation' || field.kind !== 'one-of') return [field];
    return [{ ...field, of: field.of.filter(({ value }) => can(value)) }];
  });
}

/** Faults by the fields of the form: `interlocks[0].when` is `interlocks.0.when` there. */
function inForm(refusal: Refusal): Refusal {
  if (refusal.why !== 'invalid') return refusal;
  return {
    ...refusal,
    faults: refusal.faults.map(({ path, message, ...fault }) => ({
      ...fault,
      path: path.replace(/\[(\d+)\]/g, '.$1'),
      message: formMessage(message, path.split('.').at(-1)),
    })),
  };
}
