import { cache } from 'react';
import { ask } from '#server/gate/ask';
import { getSite, getSiteShape } from '#server/sites/get-site';

/** The part of an address that names a site, as the browser sent it. */
export interface SiteAddress {
  site: string;
}

const asked = ask(getSiteShape, getSite);
const once = cache((site: string) => asked({ site }));

/** A site by its address, asked for once a request. */
export function askSite({ site }: SiteAddress) {
  return once(decodeURIComponent(site));
}
