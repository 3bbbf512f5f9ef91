/** Stands in an address for the system of a thing that belongs to the site. */
const NO_SYSTEM = '-';

/** The address of a thing. @param act what is to be done with it; its page when left out */
export function thingAddress(site: string, noun: string, system: string | null, key: string, act?: string): string {
  const parts = [noun, system ?? NO_SYSTEM, key, ...(act === undefined ? [] : [act])].map(encodeURIComponent);
  return `/sites/${encodeURIComponent(site)}/describe/${parts.join('/')}`;
}

/** The address of the form for a new thing; a system is begun by a few questions. */
export function newAddress(site: string, noun: string, system: string | null): string {
  if (noun === 'system') return `/sites/${encodeURIComponent(site)}/systems/new`;
  return `/sites/${encodeURIComponent(site)}/describe/new/${noun}/${encodeURIComponent(system ?? NO_SYSTEM)}`;
}
