import { cache } from 'react';
import { getThing, getThingShape } from '#server/describe/get-thing';
import { ask } from '#server/gate/ask';
import { chosenView } from '../../../view/chosen-view';
import type { SiteAddress } from '../ask-site';

/** The parts of an address that name a thing, as the browser sent them; `-` for the system of a thing of the site. */
export interface ThingAddress extends SiteAddress {
  noun: string;
  system: string;
  key: string;
  act?: string;
}

const asked = ask(getThingShape, getThing);
const once = cache(async (site: string, noun: string, system: string, key: string, act: string) => {
  const { units } = await chosenView();
  return await asked({ site, noun, system: systemIn(system), key, act, units });
});

/** A thing by its address, asked for once a request. */
export function askThing({ site, noun, system, key, act = 'change' }: ThingAddress) {
  const [atSite, atSystem, atKey] = [site, system, key].map(decodeURIComponent);
  return once(atSite ?? '', noun, atSystem ?? '', atKey ?? '', act);
}

/** The system an address names, if it names one. */
export function systemIn(part: string): string | undefined {
  const system = decodeURIComponent(part);
  return system === '-' ? undefined : system;
}
