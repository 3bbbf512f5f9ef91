import 'server-only';
import type { Path } from '#core/facility/path';
import { rebased } from '#core/forms/draft';
import type { DraftGroup, Field } from '#core/forms/field';
import type { FacilityForm } from '#data/facility/form';
import type { Called, Orders } from '#data/facility/identity';
import type { EditRequest } from '#shape/describe/edit';
import { draftOf } from '#shape/form/draft-of';
import { readDraft } from '#shape/form/read-draft';
import { type Fields, findThing, type ThingSpot } from './find-thing';
import { THING_KINDS } from './things';

/** A facility with one edit in it, not yet checked. */
export interface Edited {
  form: FacilityForm;
  /** Where the thing stands in it; null for one that is retired. */
  path: Path | null;
  orders: Orders;
  /** The thing as it is called before and after; null where there is none. */
  before: Called | null;
  after: Called | null;
  why: string | undefined;
  on: string | undefined;
  /** Fields that somebody else changed meanwhile, and that this changes as well. */
  clashes: string[];
}

/** What is done at a spot: what was read of the form, and which request it came with. */
interface Work {
  form: FacilityForm;
  spot: ThingSpot;
  edit: EditRequest;
  read: Fields;
  clashes: string[];
}

/**
 * Carries out an edit on the form of a facility.
 *
 * @param form     changed in place
 * @param spot     where the thing stands in it
 * @param fields   of the form that was filled in
 */
export function applyEdit(form: FacilityForm, spot: ThingSpot, fields: readonly Field[], edit: EditRequest): Edited {
  const held = heldIn(spot, edit);
  const typed = rebased(edit.draft, edit.shown, shownNow(fields, spot, edit));
  const read = readDraft(fields, typed.draft, edit.units, { draft: typed.shown, held });
  const work: Work = { form, spot, edit, read, clashes: typed.clashes };
  switch (edit.act) {
    case 'add':
      return added(work);
    case 'change':
    case 'replace':
      return changed(work);
    case 'move':
      return moved(work);
    case 'retire':
      spot.list?.splice(spot.at, 1);
      return { ...told(work), path: null, after: null };
  }
}

/** The thing as the form holds it: with the day it proposes, where one is asked for. */
function heldIn({ held }: ThingSpot, { act, shown: { on } }: EditRequest): Fields {
  return { ...held, ...(act === 'add' || act === 'change' ? {} : { on: on === '' ? undefined : on }) };
}

/** What the form would show now. Reasons and places to go to are no part of the thing. */
function shownNow(fields: readonly Field[], { held }: ThingSpot, { act, units, shown }: EditRequest): DraftGroup {
  if (held === null || act === 'move' || act === 'retire') return shown;
  return { ...draftOf(fields, held, units), ...(act === 'replace' ? beside(shown) : {}) };
}

function beside({ why = '', on = '' }: DraftGroup): DraftGroup {
  return { why, on };
}

function added(work: Work): Edited {
  const { spot, read } = work;
  spot.list?.push(withFirstPlan(read));
  const at = (spot.list?.length ?? 1) - 1;
  return { ...told(work), path: [...spot.path, at], before: null, after: called(work, String(read.key ?? read.name)) };
}

/**
 * Equipment comes with a plan that is in force at once and that nobody else has looked at. It says so, or whoever retires
 * a piece and describes it anew would have another plan in force as if somebody had agreed.
 */
function withFirstPlan(read: Fields): Fields {
  const { plan } = read;
  if (typeof plan !== 'object' || plan === null) return read;
  return { ...read, plan: { ...plan, ownWord: { why: 'its first plan, written together with the equipment' } } };
}

function changed(work: Work): Edited {
  const { form, spot, edit, read } = work;
  const { why: _why, on: _on, ...fields } = read;
  const { apart, key } = THING_KINDS[edit.noun];
  const said = edit.act === 'replace' ? fields : read;
  const kept = Object.entries(spot.held ?? {}).filter(([name]) => name === key || apart.includes(name));
  const thing = { ...Object.fromEntries(kept), ...said };
  if (spot.list === null) form.site = thing as FacilityForm['site'];
  else spot.list[spot.at] = thing;
  const one = called(work, edit.key ?? '');
  const orders: Orders = { fresh: edit.act === 'replace' && one ? [one] : [], moved: [] };
  return { ...told(work), path: spot.list === null ? spot.path : [...spot.path, spot.at], orders };
}

function moved(work: Work): Edited {
  const { form, spot, edit, read } = work;
  const { system, tank, key = edit.key } = (read.to ?? {}) as { system?: string; tank?: string; key?: string };
  const target = system === undefined ? null : findThing(form, { noun: edit.noun, system });
  // Nowhere was chosen: the thing stays, and the form is told what is missing.
  if (!target?.list) return { ...told(work), path: [...spot.path, spot.at] };
  const { tank: _from, ...rest } = spot.held ?? {};
  spot.list?.splice(spot.at, 1);
  target.list.push({ ...rest, key, ...(tank === undefined ? {} : { tank }) });
  const from = called(work, edit.key ?? '');
  const to = from && { ...from, system: system ?? null, key: String(key) };
  const orders: Orders = { fresh: [], moved: from && to ? [{ from, to }] : [] };
  return { ...told(work), path: [...target.path, target.list.length - 1], orders, after: to };
}

function told(work: Work): Edited {
  const { form, edit, read, clashes } = work;
  const one = called(work, edit.key ?? '');
  const text = (value: unknown) => (typeof value === 'string' ? value : undefined);
  const isReasoned = edit.act === 'replace' || edit.act === 'move' || edit.act === 'retire';
  return {
    form,
    path: null,
    orders: { fresh: [], moved: [] },
    before: one,
    after: one,
    why: isReasoned ? text(read.why) : edit.why,
    on: isReasoned ? text(read.on) : undefined,
    clashes,
  };
}

function called({ edit: { noun, system } }: Work, key: string): Called | null {
  const { table } = THING_KINDS[noun];
  return table === undefined ? null : { table, system: system ?? null, key };
}
