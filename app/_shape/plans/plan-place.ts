import { z } from 'zod';
import { draftText } from '../describe/draft';
import { freeText, keyText } from '../facility/words';
import { systemPlace } from '../reviews/case-place';

/** A piece of equipment of a system, by their keys. */
export const piecePlace = systemPlace.extend({ equipment: keyText('Key of the equipment.') });

/** A version number, as a form or an address writes it. */
const version = z.coerce.number().int().gte(1).lte(1_000_000);

/** A version of the plan of a piece of equipment. */
export const versionPlace = piecePlace.extend({ version });

/** The same, with a reason. */
export const versionReason = versionPlace.extend({ reason: freeText('Why.') });

/** A plan that somebody writes. */
export const planDraft = piecePlace.extend({
  /** The plan in the form of the facility file, as JSON. */
  plan: z.string({ error: 'must be a plan' }).max(100_000),
  reason: freeText('Why it is written.'),
  /** The latest version the author saw: with a later one stored, nothing is written. */
  latest: z.coerce.number().int().gte(0),
});

/** A submitted version that is to be put into force. */
export const planApproval = versionPlace.extend({
  /** The version in force that the person looked at: with another in force, nothing is done. */
  inForce: version,
  /** Why a sole keeper puts their own plan into force. */
  why: freeText('Why it cannot wait for somebody else.').optional(),
});

/** A system and an instant in its zone; the present one when left out. */
export const planInstant = systemPlace.extend({
  day: z.iso.date({ error: 'must be a day of the calendar as YYYY-MM-DD' }).optional(),
  time: z
    .string()
    .regex(/^(?:[01]\d|2[0-3]):[0-5]\d$/, { error: 'must be a time of day as HH:MM' })
    .optional(),
});

/** The form for the next version of a plan, begun from one that is there, in the person's units. */
export const planForm = piecePlace.extend({ from: version.optional(), units: z.enum(['metric', 'us']) });

/** A plan as it was typed into that form. */
export const typedPlan = planForm.extend({
  from: version,
  draft: draftText,
  reason: freeText('Why it is written.'),
  latest: z.coerce.number().int().gte(0),
});
