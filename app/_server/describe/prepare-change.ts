import 'server-only';
import type { Facility } from '#core/facility/facility';
import type { FieldFault } from '#core/forms/field';
import { ok, type Result, refused } from '#core/result';
import { canonicalText } from '#data/canonical';
import type { EditRequest } from '#shape/describe/edit';
import { checkForm } from '#shape/facility/check-form';
import { NOT_KEPT, unkeepable } from '../facility/unkeepable';
import type { Refusal } from '../gate/refusal';
import { applyEdit, type Edited } from './apply-edit';
import { fieldFaults, reasonFaults } from './change-faults';
import { findThing, formOfFacility, type ThingAddress } from './find-thing';
import { thingFields } from './thing-fields';
import { THING_KINDS } from './things';

/** A change that is sound and may be kept. */
export interface Prepared {
  after: Facility;
  edited: Edited;
  /** Labels of fields that somebody else changed meanwhile. */
  clashes: string[];
}

/**
 * Works an edit into a facility and checks the whole of it.
 *
 * @param before   the facility as it is stored
 * @param today    ISO date at the site
 * @returns        the facility as it would be; or every fault, by the field of the form where it has one
 */
export function prepareChange(before: Facility, edit: EditRequest, today: string): Result<Prepared, Refusal> {
  const form = formOfFacility(before);
  const spot = findThing(form, addressOf(edit));
  if (!spot || !canBe(edit)) return refused({ why: 'not-found', what: 'thing' });
  const system = before.systems.find(({ key }) => key === edit.system) ?? null;
  const fields = thingFields(edit.noun, edit.act, { facility: before, system, custom: edit.units });
  const edited = applyEdit(form, spot, fields, edit);
  const faults = reasonsMissing(edited, edit, today);
  const checked = checkForm(form);
  if (!checked.ok) return invalid([...faults, ...fieldFaults(checked.reason, edited, fields)]);
  const unkept = unkeepable(form).map((path) => ({ path, message: NOT_KEPT }));
  const all = [...faults, ...fieldFaults(unkept, edited, fields), ...planFaults(before, checked.value)];
  if (all.length > 0) return invalid(all);
  const labels = new Map(fields.map(({ name, label }) => [name, label]));
  return ok({ after: checked.value, edited, clashes: edited.clashes.map((name) => labels.get(name) ?? name) });
}

/**
 * Whether this is done to a thing of its kind at all, which the pages know and a request need not: a safeguard put in the
 * place of another would take its tests along, and a system would leave its history behind.
 */
function canBe({ act, noun }: EditRequest): boolean {
  const { replaced = false, moved = false, table } = THING_KINDS[noun];
  switch (act) {
    case 'change':
      return true;
    case 'add':
      return table !== undefined && noun !== 'system';
    case 'retire':
      return table !== undefined;
    case 'replace':
      return replaced;
    case 'move':
      return moved;
  }
}

/** The thing an edit is about; one that is to come has no key yet, whatever was sent. */
function addressOf({ act, noun, system, key }: EditRequest): ThingAddress {
  return { noun, system, key: act === 'add' ? undefined : (key ?? '') };
}

/** What is not said of why, when and where to. */
function reasonsMissing(edited: Edited, { act }: EditRequest, today: string): FieldFault[] {
  if (act === 'add' || act === 'change') return [];
  const isNowhere = act === 'move' && edited.orders.moved.length === 0;
  return [...(isNowhere ? [{ path: 'to', message: 'must be chosen' }] : []), ...reasonFaults(edited, today)];
}

/** What stands in a plan is changed by a version of its own, which somebody else looks at. */
function planFaults(before: Facility, after: Facility): FieldFault[] {
  const plans = new Map(before.systems.flatMap(plansIn));
  return after.systems.flatMap(plansIn).flatMap(([name, plan]) => {
    const held = plans.get(name);
    if (held === undefined || held === plan) return [];
    return [{ path: 'plan', message: 'is changed on the page of the plan, where somebody else puts it into force' }];
  });
}

function plansIn({ key, equipment }: Facility['systems'][number]): [string, string][] {
  return equipment.map((one) => [`${key}/${one.key}`, canonicalText(one.plan)]);
}

function invalid(faults: FieldFault[]): Result<never, Refusal> {
  return refused({ why: 'invalid', faults });
}
