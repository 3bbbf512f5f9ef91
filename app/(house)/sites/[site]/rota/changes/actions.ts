'use server';

import { act } from '#server/gate/act';
import { answerChange, answerChangeShape } from '#server/rota/changes/answer-change';
import { askLeave, askLeaveShape } from '#server/rota/changes/ask-leave';
import { askSwap, askSwapShape } from '#server/rota/changes/ask-swap';

/** Pages that show something else once leave or a swap is asked for or decided. */
const shown = ({ site }: { site: string }) => [
  '/',
  `/sites/${site}`,
  `/sites/${site}/rota`,
  `/sites/${site}/rota/changes`,
  `/sites/${site}/rota/week`,
];

export const askLeaveAction = act(askLeaveShape, askLeave, shown);

export const askSwapAction = act(askSwapShape, askSwap, shown);

export const answerChangeAction = act(answerChangeShape, answerChange, shown);
