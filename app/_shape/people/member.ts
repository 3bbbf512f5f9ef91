import { z } from 'zod';
import { ROLES } from '#core/rota/rota';
import { sitePlace } from '../reviews/case-place';

const role = z.enum(ROLES, { error: 'must be one of the five roles' });

/** Somebody with a role at a site, by their account. */
export const memberPlace = sitePlace.extend({ account: z.uuid() });

/** Somebody to be let in. */
export const invitation = sitePlace.extend({
  email: z.email({ error: 'must be an e-mail address' }).max(254),
  name: z.string({ error: 'must be given' }).trim().min(1, { error: 'must be given' }).max(120),
  role,
});

/** Another role for somebody. */
export const roleChange = memberPlace.extend({ role });

/** Whom of the rota somebody is, by key; nobody when left out. */
export const rotaLink = memberPlace.extend({ person: z.string().max(120).optional() });
