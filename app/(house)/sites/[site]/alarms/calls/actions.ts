'use server';

import { answerTestCall, answerTestCallShape } from '#server/calls/answer-test-call';
import { removeWebhook, removeWebhookShape, setWebhook, setWebhookShape } from '#server/calls/change-webhook';
import { makeTestCall, makeTestCallShape } from '#server/calls/make-test-call';
import { act } from '#server/gate/act';

/** The page one is on says something else once one of these is done. */
const here = () => ['/'];

export const makeTestCallAction = act(makeTestCallShape, makeTestCall, here);

export const answerTestCallAction = act(answerTestCallShape, answerTestCall, here);

export const setWebhookAction = act(setWebhookShape, setWebhook, here);

export const removeWebhookAction = act(removeWebhookShape, removeWebhook, here, { always: true });
