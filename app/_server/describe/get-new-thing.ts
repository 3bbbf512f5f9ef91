import 'server-only';
import type { z } from 'zod';
import { emptyGroup } from '#core/forms/draft';
import type { DraftGroup, Field } from '#core/forms/field';
import { ok, type Result, refused } from '#core/result';
import type { Custom } from '#core/units/shown';
import { newPlace } from '#shape/describe/edit';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { dressed } from './dressed-fields';
import { findStoredSite } from '../reviews/find-stored-site';
import { findThing, formOfFacility } from './find-thing';
import { thingFields } from './thing-fields';
import { THING_KINDS } from './things';
import { viewed } from './viewed';

/** What is to be added, in the units of whoever adds it. */
export const getNewThingShape = newPlace.extend(viewed);

/** The page of a thing that is to be added. */
export interface NewThingPage {
  site: { key: string; name: string };
  system: { key: string; name: string } | null;
  one: string;
  fields: Field[];
  draft: DraftGroup;
  custom: Custom;
}

/** An empty form for a new thing of a site or of a system. */
export async function getNewThing(
  who: Who,
  { site, noun, system, units }: z.output<typeof getNewThingShape>,
): Promise<Result<NewThingPage, Refusal>> {
  const found = await findStoredSite(who, 'describe', site);
  if (!found.ok) return found;
  const { entry, stored } = found.value;
  const { facility } = stored;
  const home = facility.systems.find(({ key }) => key === system) ?? null;
  if (!findThing(formOfFacility(facility), { noun, system })) return refused({ why: 'not-found', what: 'system' });
  const bare = thingFields(noun, 'add', { facility, system: home, custom: units });
  const fields = dressed(bare, { facility, noun, system: home, asked: new Map(), custom: units });
  return ok({
    site: { key: entry.key, name: entry.name },
    system: home && { key: home.key, name: home.name },
    one: THING_KINDS[noun].one,
    fields,
    draft: emptyGroup(fields),
    custom: units,
  });
}
