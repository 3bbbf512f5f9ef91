import { z } from 'zod';
import { keyText } from '../facility/words';

/** A site, by its key. */
export const sitePlace = z.object({ site: keyText('Key of the site.') });

/** A system of a site, by their keys. */
export const systemPlace = sitePlace.extend({ system: keyText('Key of the system.') });

/** A fault case of a system, as its review names it: fault, thing and state with colons between them. */
export const casePlace = systemPlace.extend({ case: z.string().min(1).max(400) });
