'use server';

import { act } from '#server/gate/act';
import { addNoticeOf, addNoticeShape, endNoticeOf, endNoticeShape } from '#server/notices/add-notice';
import { answerAskedOf, answerAskedShape } from '#server/states/answer-asked';
import { beginStateOf, beginStateShape } from '#server/states/begin-state';
import { endStateOf, endStateShape } from '#server/states/end-state';
import { authoriseState, authoriseStateShape, lookAfterState, lookAfterStateShape } from '#server/states/note-state';
import { putOffStateOf, putOffStateShape } from '#server/states/put-off-state';
import { signSecond, signSecondShape } from '#server/states/sign-second';
import { endTimedShape, endTimedState, timeState, timeStateShape } from '#server/states/time-state';

/** Pages that show something else once a state has changed. */
const shown = ({ site, system }: { site: string; system: string }) => [
  '/',
  `/sites/${site}`,
  `/sites/${site}/states`,
  `/sites/${site}/states/${system}`,
  `/sites/${site}/systems/${system}`,
  `/sites/${site}/handover`,
];

export const beginStateAction = act(beginStateShape, beginStateOf, shown);

export const putOffStateAction = act(putOffStateShape, putOffStateOf, shown);

export const endStateAction = act(endStateShape, endStateOf, shown);

export const lookAfterStateAction = act(lookAfterStateShape, lookAfterState, shown);

export const authoriseStateAction = act(authoriseStateShape, authoriseState, shown);

export const signSecondAction = act(signSecondShape, signSecond, ({ site }) => [
  `/sites/${site}/states`,
  `/sites/${site}/handover`,
]);

/** Pages that show notices. */
const noticed = ({ site }: { site: string }) => [`/sites/${site}/states`, `/sites/${site}/handover`];

export const addNoticeAction = act(addNoticeShape, addNoticeOf, noticed);

export const endNoticeAction = act(endNoticeShape, endNoticeOf, noticed);

export const answerAskedAction = act(answerAskedShape, answerAskedOf, shown);

export const timeStateAction = act(timeStateShape, timeState, shown);

export const endTimedAction = act(endTimedShape, endTimedState, shown);
