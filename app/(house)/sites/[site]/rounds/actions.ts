'use server';

import { act } from '#server/gate/act';
import { beginBesides, beginBesidesShape } from '#server/rounds/begin-besides';
import { beginRound, beginRoundShape } from '#server/rounds/begin-round';
import { enter, enterShape } from '#server/rounds/enter';
import { enterRest, enterRestShape } from '#server/rounds/enter-rest';
import { lookAgain, lookAgainShape } from '#server/rounds/look-again';
import { addPhotoShape, addPhotoTo } from '#server/rounds/photos/add-photo';
import { takeBack, takeBackShape } from '#server/rounds/take-back';
import { signRound, signRoundShape } from '#server/rounds/sign-round';

/** Pages that show something else once a round has changed. */
const shown = ({ site, round }: { site: string; round: string }) => [
  `/sites/${site}`,
  `/sites/${site}/rounds`,
  `/sites/${site}/rounds/${round}`,
];

export const beginRoundAction = act(beginRoundShape, beginRound, shown);

export const beginBesidesAction = act(beginBesidesShape, beginBesides, shown);

export const enterAction = act(enterShape, enter, shown);

export const enterRestAction = act(enterRestShape, enterRest, shown);

export const addPhotoAction = act(addPhotoShape, addPhotoTo, shown, { asBytes: true });

export const signRoundAction = act(signRoundShape, signRound, shown);

export const lookAgainAction = act(lookAgainShape, lookAgain, shown);

export const takeBackAction = act(takeBackShape, takeBack, ({ site }) => [
  `/sites/${site}/rounds`,
  `/sites/${site}/states`,
  `/sites/${site}/handover`,
]);
