import 'server-only';
import { z } from 'zod';
import type { Facility } from '#core/facility/facility';
import type { Path } from '#core/facility/path';
import type { FacilityForm } from '#data/facility/form';
import type { ThingNoun } from '#shape/describe/edit';
import { facilityShape } from '#shape/facility/facility';
import { THING_KINDS } from './things';

/** Fields of a thing as the file writes them. */
export type Fields = Record<string, unknown>;

/** Which thing of a facility is meant. */
export interface ThingAddress {
  noun: ThingNoun;
  /** Left out for a thing of the site. */
  system?: string;
  /** Left out for one that is to come. */
  key?: string;
}

/** Where a thing stands in the form of the file. */
export interface ThingSpot {
  /** The list it is or would be a member of; null for the site itself. */
  list: Fields[] | null;
  /** Path of the list, or of the site itself. */
  path: Path;
  /** Its place in the list; −1 for one that is to come. */
  at: number;
  /** What it is; null for one that is to come. */
  held: Fields | null;
}

/** A facility as its file writes it, with every list there. The caller may change it: nothing else holds it. */
export function formOfFacility(facility: Facility): FacilityForm {
  return structuredClone(z.encode(facilityShape, facility));
}

/**
 * Finds a thing, or the list in which it is to come.
 *
 * @param form   the facility as its file writes it; gains an empty list where the thing's list is left out
 * @returns      null when there is no such thing, or no such system
 */
export function findThing(form: FacilityForm, { noun, system, key }: ThingAddress): ThingSpot | null {
  const kind = THING_KINDS[noun];
  if (noun === 'site') return { list: null, path: ['site'], at: -1, held: form.site as Fields };
  const owner = ownerOf(form, system);
  const name = system === undefined ? kind.siteList : kind.systemList;
  if (!owner || name === undefined) return null;
  owner.fields[name] ??= [];
  const list = owner.fields[name] as Fields[];
  const path: Path = [...owner.path, name];
  if (key === undefined) return { list, path, at: -1, held: null };
  const at = list.findIndex((member) => member[kind.key] === key);
  const held = list[at];
  return held ? { list, path, at, held } : null;
}

function ownerOf(form: FacilityForm, system: string | undefined): { fields: Fields; path: Path } | null {
  if (system === undefined) return { fields: form as Fields, path: [] };
  const at = form.systems?.findIndex(({ key }) => key === system) ?? -1;
  const found = form.systems?.[at];
  return found ? { fields: found as Fields, path: ['systems', at] } : null;
}

/** What a thing is called on screen. */
export function thingName(held: Fields, noun: ThingNoun): string {
  const name = held.name ?? held.group ?? held.key ?? '';
  return noun === 'state' ? String(name).replaceAll('-', ' ') : String(name);
}
