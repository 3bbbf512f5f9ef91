import { cache } from 'react';
import { ask } from '#server/gate/ask';
import { getCase, getCaseShape } from '#server/reviews/get-case';
import type { SystemAddress } from '../../ask-system';

/** The parts of a fault case's address, as the browser sent them. */
export interface CaseAddress extends SystemAddress {
  case: string;
}

const asked = ask(getCaseShape, getCase);
const once = cache((site: string, system: string, id: string) => asked({ site, system, case: id }));

/** A fault case by its address, asked for once a request. */
export function askCase({ site, system, case: id }: CaseAddress) {
  return once(decodeURIComponent(site), decodeURIComponent(system), decodeURIComponent(id));
}
