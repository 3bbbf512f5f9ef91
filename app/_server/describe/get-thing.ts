import 'server-only';
import type { z } from 'zod';
import { isFirst } from '#core/forms/draft';
import type { DraftGroup, Field } from '#core/forms/field';
import { ok, type Result, refused } from '#core/result';
import type { Custom } from '#core/units/shown';
import { type Act, actPlace } from '#shape/describe/edit';
import { draftOf } from '#shape/form/draft-of';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { askedFor } from './asked-for';
import { findStoredSite } from '../reviews/find-stored-site';
import { findThing, formOfFacility, thingName } from './find-thing';
import { dressed } from './dressed-fields';
import { type History, historyOf } from './history';
import { thingFields } from './thing-fields';
import { THING_KINDS } from './things';
import { viewed } from './viewed';

/** A thing of a site, in the units of whoever looks at it. */
export const getThingShape = actPlace.extend(viewed);

/** The page of a thing: its form, and what became of it so far. */
export interface ThingPage {
  site: { key: string; name: string; zone: string };
  /** Null for a thing of the site. */
  system: { key: string; name: string } | null;
  /** What is to be done with it. */
  act: Exclude<Act, 'add'>;
  /** What it is called, and what it is. */
  name: string;
  one: string;
  fields: Field[];
  /** What the form shows at first. */
  draft: DraftGroup;
  custom: Custom;
  /** What else can be done with it. */
  acts: { replace: boolean; move: boolean; retire: boolean };
  /** Whether the person may change it. */
  mayDescribe: boolean;
  /** Null for whoever may not read the record. */
  history: History | null;
}

/** A thing of a site with the form for one of the things that can be done with its description. */
export async function getThing(
  who: Who,
  { site, noun, system, key, act, units }: z.output<typeof getThingShape>,
): Promise<Result<ThingPage, Refusal>> {
  const found = await findStoredSite(who, 'see', site);
  if (!found.ok) return found;
  const { entry, stored, today } = found.value;
  const { facility } = stored;
  const spot = findThing(formOfFacility(facility), { noun, system, key });
  const kind = THING_KINDS[noun];
  const isPossible =
    act === 'change' || (act === 'retire' ? noun !== 'site' : kind[act === 'move' ? 'moved' : 'replaced']);
  if (!spot?.held || !isPossible || (noun === 'site' && key !== site))
    return refused({ why: 'not-found', what: 'thing' });
  const home = facility.systems.find((one) => one.key === system) ?? null;
  const bare = thingFields(noun, act, { facility, system: home, custom: units });
  const asked = await askedFor(entry.id, stored, { noun, system, key });
  const fields = dressed(bare, { facility, noun, system: home, key, asked, custom: units });
  const draft = { ...draftOf(fields, spot.held, units), ...(act === 'change' ? {} : { on: today }) };
  return ok({
    site: { key: entry.key, name: entry.name, zone: entry.zone },
    system: home && { key: home.key, name: home.name },
    act,
    name: thingName(spot.held, noun),
    one: kind.one,
    fields: order(fields, draft),
    draft,
    custom: units,
    acts: { replace: kind.replaced === true, move: kind.moved === true, retire: noun !== 'site' },
    mayDescribe: may(who, 'describe', site),
    history: may(who, 'read-record', site) ? await historyOf(entry.id, { noun, system, key }) : null,
  });
}

/** What the review asks for comes first, then the rest as it was. */
function order(fields: readonly Field[], draft: DraftGroup): Field[] {
  const rank = (field: Field) => (field.asked === undefined ? (isFirst(field, draft) ? 1 : 2) : 0);
  return fields
    .map((field, at) => ({ field, at }))
    .sort((a, b) => rank(a.field) - rank(b.field) || a.at - b.at)
    .map(({ field }) => field);
}
