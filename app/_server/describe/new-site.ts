import 'server-only';
import { z } from 'zod';
import { FACILITY_FORMAT, type Facility } from '#core/facility/facility';
import { emptyGroup } from '#core/forms/draft';
import type { DraftGroup, Field } from '#core/forms/field';
import { ok, type Result, refused } from '#core/result';
import type { Custom } from '#core/units/shown';
import { findSite } from '#data/sites';
import { newSiteRequest } from '#shape/describe/edit';
import { checkForm, type FormFault } from '#shape/facility/check-form';
import { noun } from '#shape/facility/noun';
import { roomShape } from '#shape/facility/room';
import { addressKey, nameText, zoneName } from '#shape/facility/words';
import { readDraft } from '#shape/form/read-draft';
import { keepFacility } from '../facility/import-facility';
import { NOT_KEPT, unkeepable } from '../facility/unkeepable';
import { mayBeginSite } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { formOf } from './form-of';
import { nameFirst } from './thing-fields';
import { viewed } from './viewed';

/** What must be known of a site before anything else can be described. */
const firstShape = noun('firstSite', 'A site with its first room.', {
  name: nameText('Name of the site.'),
  key: addressKey('Key of the site.'),
  zone: zoneName('Zone of the site.'),
  room: roomShape.describe('The first room, with the air in it.'),
});

export const getNewSiteShape = z.object(viewed);
export const newSiteShape = newSiteRequest;

/** The form of a new site. */
export async function getNewSite(
  who: Who,
  { units }: z.output<typeof getNewSiteShape>,
): Promise<Result<{ fields: Field[]; draft: DraftGroup; custom: Custom }, Refusal>> {
  if (!mayBeginSite(who)) return refused({ why: 'not-allowed' });
  const fields = fieldsFor(units);
  return await Promise.resolve(ok({ fields, draft: emptyGroup(fields), custom: units }));
}

/** Begins the description of a new site. */
export async function newSite(
  who: Who,
  { draft, units }: z.output<typeof newSiteShape>,
): Promise<Result<{ key: string; name: string }, Refusal>> {
  if (!mayBeginSite(who)) return refused({ why: 'not-allowed' });
  const { room, ...site } = readDraft(fieldsFor(units), draft, units);
  const form = { format: FACILITY_FORMAT, site, rooms: [room ?? {}] };
  const checked = checkForm(form);
  if (!checked.ok) return invalid(checked.reason);
  const unkept = unkeepable(form).map((path) => ({ path, message: NOT_KEPT }));
  if (unkept.length > 0) return invalid(unkept);
  const { key } = checked.value.site;
  const taken = { path: ['site', 'key'], message: 'is taken by another site' };
  if (await findSite(key)) return invalid([taken]);
  // Whoever began a site of this key a moment ago keeps it.
  const kept = await keepFacility(who, checked.value, 0);
  if (kept.ok) return ok(kept.value.site);
  return kept.reason.why === 'conflict' ? invalid([taken]) : kept;
}

/** Nothing is there yet to be chosen. */
const NOTHING: Facility = {
  format: FACILITY_FORMAT,
  site: { key: '', name: '', zone: '' },
  rooms: [],
  circuits: [],
  monitors: [],
  safeguards: [],
  people: [],
  shifts: [],
  rounds: [],
  profiles: [],
  systems: [],
};

function fieldsFor(custom: Custom): Field[] {
  const fields = formOf(firstShape, { facility: NOTHING, system: null, custom });
  return fields.map((field) => (field.kind === 'group' ? { ...field, fields: nameFirst(field.fields) } : field));
}

/** `site.key` and `rooms.0.name` of the file are `key` and `room.name` of the form. */
function invalid(faults: readonly FormFault[]): Result<never, Refusal> {
  const said = faults.map(({ path, message }) => ({
    path: path
      .join('.')
      .replace(/^site\./, '')
      .replace(/^rooms\.0\b/, 'room'),
    message,
  }));
  return refused({ why: 'invalid', faults: said });
}
