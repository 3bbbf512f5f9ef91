import { cache } from 'react';
import { ask } from '#server/gate/ask';
import { getDocument, getDocumentShape } from '#server/reviews/get-document';
import type { SystemAddress } from '../ask-system';

const asked = ask(getDocumentShape, getDocument);
const once = cache((site: string, system: string) => asked({ site, system }));

/** The review of a system as a document, by its address, asked for once a request. */
export function askDocument({ site, system }: SystemAddress) {
  return once(decodeURIComponent(site), decodeURIComponent(system));
}
