import { cache } from 'react';
import { ask } from '#server/gate/ask';
import { getSystem, getSystemShape } from '#server/reviews/get-system';

/** The parts of a system's address, as the browser sent them. */
export interface SystemAddress {
  site: string;
  system: string;
}

const asked = ask(getSystemShape, getSystem);
const once = cache((site: string, system: string) => asked({ site, system }));

/** A system by its address, asked for once a request. */
export function askSystem({ site, system }: SystemAddress) {
  return once(decodeURIComponent(site), decodeURIComponent(system));
}
