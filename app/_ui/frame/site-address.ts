/** Stands in an address for the system of what belongs to the site itself. */
export const NO_SYSTEM = '-';

/**
 * Address of the page of a site, or of what lies beneath it.
 *
 * @param site    its key
 * @param parts   what follows, part by part: `siteAddress(site, 'systems', system)`
 */
export function siteAddress(site: string, ...parts: readonly string[]): string {
  return `/sites/${[site, ...parts].map(encodeURIComponent).join('/')}`;
}
