'use server';

import { newSite, newSiteShape } from '#server/describe/new-site';
import { act } from '#server/gate/act';

export const newSiteAction = act(newSiteShape, newSite, () => ['/']);
