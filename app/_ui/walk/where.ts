/** Where somebody is on the page by which rounds are walked: told behind the #, which is asked of nobody and survives a reload. */
export type Where =
  | { at: 'start' }
  | { at: 'site'; site: string }
  | { at: 'walk'; site: string; walk: string }
  | { at: 'place'; site: string; walk: string; place: number }
  /** The label of a tank was scanned, or its code typed; without one, one is to be. */
  | { at: 'label'; site: string; code: string | null };

const LABEL = 'at';

/** The address of a place on the page. */
export function hashOf(where: Where): string {
  const parts = (() => {
    switch (where.at) {
      case 'start':
        return [];
      case 'site':
        return [where.site];
      case 'walk':
        return [where.site, where.walk];
      case 'place':
        return [where.site, where.walk, String(where.place)];
      case 'label':
        return [where.site, LABEL, ...(where.code === null ? [] : [where.code])];
    }
  })();
  return `#/${parts.map(encodeURIComponent).join('/')}`;
}

/** Where an address leads; to the start when it leads nowhere. */
export function whereIs(hash: string): Where {
  const [site, walk, place] = hash
    .replace(/^#?\/?/, '')
    .split('/')
    .map(decoded);
  if (!site) return { at: 'start' };
  if (!walk) return { at: 'site', site };
  if (walk === LABEL) return { at: 'label', site, code: place || null };
  const number = Number(place);
  return Number.isInteger(number) && number > 0
    ? { at: 'place', site, walk, place: number }
    : { at: 'walk', site, walk };
}

function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return '';
  }
}

/** The page by which the rounds of a site are walked, with a signal or without. @param code of the label of a tank */
export function walkAddress(site: string, code?: string): string {
  return `/walk${hashOf(code === undefined ? { at: 'site', site } : { at: 'label', site, code })}`;
}
