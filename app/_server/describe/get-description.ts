import 'server-only';
import type { z } from 'zod';
import type { Facility } from '#core/facility/facility';
import { ok, type Result } from '#core/result';
import { type ThingNoun, THINGS } from '#shape/describe/edit';
import { optionName } from '#shape/form/words-of';
import { sitePlace } from '#shape/reviews/case-place';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { findStoredSite } from '../reviews/find-stored-site';
import { type Fields, formOfFacility, thingName } from './find-thing';
import { THING_KINDS } from './things';

export const getDescriptionShape = sitePlace;

/** Things of one kind in one place. */
export interface ThingList {
  noun: ThingNoun;
  /** What one is called. */
  one: string;
  things: { key: string; name: string; what: string }[];
}

/** What describes a site, or one of its systems. */
export interface DescribedPart {
  /** Null for the site itself. */
  system: { key: string; name: string } | null;
  lists: ThingList[];
}

export interface DescriptionPage {
  site: { key: string; name: string };
  parts: DescribedPart[];
  mayDescribe: boolean;
}

/** Fields that say in a word what a thing is. */
const KINDS = ['type', 'role', 'quantity', 'kind'];

/** Everything a site is described by: its own things first, then system by system. */
export async function getDescription(
  who: Who,
  { site }: z.output<typeof getDescriptionShape>,
): Promise<Result<DescriptionPage, Refusal>> {
  const found = await findStoredSite(who, 'see', site);
  if (!found.ok) return found;
  const { entry, stored } = found.value;
  return ok({
    site: { key: entry.key, name: entry.name },
    parts: partsOf(stored.facility),
    mayDescribe: may(who, 'describe', site),
  });
}

function partsOf(facility: Facility): DescribedPart[] {
  const form = formOfFacility(facility);
  const systems = (form.systems ?? []).map((system) => ({
    system: { key: system.key, name: system.name },
    lists: THINGS.flatMap((noun) => listIn(system, noun, THING_KINDS[noun].systemList)),
  }));
  return [
    { system: null, lists: THINGS.flatMap((noun) => listIn(form, noun, THING_KINDS[noun].siteList)) },
    ...systems,
  ];
}

function listIn(owner: object, noun: ThingNoun, name: string | undefined): ThingList[] {
  if (name === undefined) return [];
  const { one, key } = THING_KINDS[noun];
  const members = ((owner as Fields)[name] ?? []) as Fields[];
  const things = members.map((member) => ({
    key: String(member[key]),
    name: thingName(member, noun),
    what:
      noun === 'person'
        ? ''
        : optionName(String(KINDS.map((field) => member[field]).find((value) => value !== undefined) ?? '')),
  }));
  return [{ noun, one, things }];
}
