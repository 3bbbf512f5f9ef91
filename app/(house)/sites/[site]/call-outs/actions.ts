'use server';

import { beginCallOut, beginCallOutShape } from '#server/call-outs/begin-call-out';
import { endCallOut, endCallOutShape } from '#server/call-outs/end-call-out';
import { extendCallOut, extendCallOutShape } from '#server/call-outs/extend-call-out';
import { goAlone, goAloneShape } from '#server/call-outs/go-alone';
import { seeToCallOut, seeToCallOutShape } from '#server/call-outs/see-to-call-out';
import { act } from '#server/gate/act';

/** The page one is on says something else once one of these is done. */
const here = () => ['/'];

export const beginCallOutAction = act(beginCallOutShape, beginCallOut, here);

export const goAloneAction = act(goAloneShape, goAlone, here);

export const extendCallOutAction = act(extendCallOutShape, extendCallOut, here, { always: true });

export const seeToCallOutAction = act(seeToCallOutShape, seeToCallOut, here, { always: true });

export const endCallOutAction = act(endCallOutShape, endCallOut, here, { always: true });
