'use server';

import { act } from '#server/gate/act';
import { endFeedOf, endFeedShape, makeFeedFor, makeFeedShape } from '#server/rota/make-feed';

/** The page that lists somebody's addresses. */
const shown = ({ site }: { site: string }) => [`/sites/${site}/rota`];

export const makeFeedAction = act(makeFeedShape, makeFeedFor, shown);

/** On a full disk as well: it shuts something. */
export const endFeedAction = act(endFeedShape, endFeedOf, shown, { always: true });
