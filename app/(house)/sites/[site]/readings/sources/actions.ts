'use server';

import { act } from '#server/gate/act';
import { endReadingSource, endSourceShape } from '#server/readings/end-source';
import { makeReadingSource, makeSourceShape } from '#server/readings/make-source';
import { nameSensor, nameSensorShape, unnameSensor, unnameSensorShape } from '#server/readings/name-sensor';

/** The page one is on says something else once one of these is done. */
const here = () => ['/'];

export const makeSourceAction = act(makeSourceShape, makeReadingSource, here);

export const endSourceAction = act(endSourceShape, endReadingSource, here, { always: true });

export const nameSensorAction = act(nameSensorShape, nameSensor, here);

export const unnameSensorAction = act(unnameSensorShape, unnameSensor, here);
