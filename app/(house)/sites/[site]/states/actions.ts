'use server';

import { act } from '#server/gate/act';
import { beginStateOf, beginStateShape } from '#server/states/begin-state';
import { endStateOf, endStateShape } from '#server/states/end-state';
import { putOffStateOf, putOffStateShape } from '#server/states/put-off-state';

/** Pages that show something else once a state has changed. */
const shown = ({ site, system }: { site: string; system: string }) => [
  '/',
  `/sites/${site}`,
  `/sites/${site}/states`,
  `/sites/${site}/states/${system}`,
  `/sites/${site}/systems/${system}`,
];

export const beginStateAction = act(beginStateShape, beginStateOf, shown);

export const putOffStateAction = act(putOffStateShape, putOffStateOf, shown);

export const endStateAction = act(endStateShape, endStateOf, shown);
