import { NO_SYSTEM, siteAddress } from '../frame/site-address';

/** The address of a thing. @param act what is to be done with it; its page when left out */
export function thingAddress(site: string, noun: string, system: string | null, key: string, act?: string): string {
  return siteAddress(site, 'describe', noun, system ?? NO_SYSTEM, key, ...(act === undefined ? [] : [act]));
}

/** The address of the form for a new thing; a system is begun by a few questions. */
export function newAddress(site: string, noun: string, system: string | null): string {
  if (noun === 'system') return siteAddress(site, 'systems', 'new');
  return siteAddress(site, 'describe', 'new', noun, system ?? NO_SYSTEM);
}
