'use server';

import { act } from '#server/gate/act';
import { handKey, handKeyShape } from '#server/keys/hand-key';

/** The page one is on says something else once it is done. */
const here = () => ['/'];

export const handKeyAction = act(handKeyShape, handKey, here);
