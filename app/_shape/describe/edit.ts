import { z } from 'zod';
import { freeText, keyText } from '../facility/words';
import { sitePlace } from '../reviews/case-place';
import { draftText } from './draft';

/** What a site is described by, in the order of the pages. */
export const THINGS = [
  'site',
  'room',
  'circuit',
  'monitor',
  'person',
  'shift',
  'round',
  'profile',
  'tank',
  'equipment',
  'sensor',
  'stock',
  'safeguard',
  'alarm',
  'state',
  'system',
] as const;
export type ThingNoun = (typeof THINGS)[number];

/** What can be done to the description of a thing. */
export const ACTS = ['change', 'add', 'replace', 'move', 'retire'] as const;
export type Act = (typeof ACTS)[number];

const system = keyText('Key of the system it stands in; left out for a thing of the site.').optional();

/** A thing of a site. */
const thingPlace = sitePlace.extend({
  noun: z.enum(THINGS),
  system,
  key: keyText('Key of the thing.'),
});

/** A thing, and what is to be done with it. */
export const actPlace = thingPlace.extend({ act: z.enum(ACTS).exclude(['add']) });

/** A new thing, which has no key yet. A system is begun by a few questions of its own. */
export const newPlace = sitePlace.extend({ noun: z.enum(THINGS).exclude(['site', 'system']), system });

/** One change of the description of a site. */
export const editRequest = sitePlace.extend({
  act: z.enum(ACTS),
  noun: z.enum(THINGS),
  system,
  /** Left out for a new thing. */
  key: keyText('Key of the thing.').optional(),
  /** What was typed. */
  draft: draftText,
  /** What the form showed at first; what is the same as that was not touched. */
  shown: draftText,
  /** Why, where it is said apart from the form; what is replaced, moved or retired says it there. */
  why: freeText('Why it is changed.').optional(),
  /** In which units numbers were typed. */
  units: z.enum(['metric', 'us']),
});
export type EditRequest = z.output<typeof editRequest>;

/** One change to be kept. */
export const keepRequest = editRequest.extend({
  /** Revision of the site whose difference the person looked at. */
  basedOn: z.coerce.number().int().gte(1),
});

/** A site that is to be described on screen. */
export const newSiteRequest = z.object({ draft: draftText, units: z.enum(['metric', 'us']) });
