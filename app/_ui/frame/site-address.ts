/**
 * Address of the page of a site, or of what lies beneath it.
 *
 * @param site    its key
 * @param parts   what follows, part by part: `siteAddress(site, 'systems', system)`
 */
export function siteAddress(site: string, ...parts: readonly string[]): string {
  return `/sites/${[site, ...parts].map(encodeURIComponent).join('/')}`;
}
