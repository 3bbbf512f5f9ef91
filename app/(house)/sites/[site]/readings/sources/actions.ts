'use server';

import { act } from '#server/gate/act';
import { addBrokerTopic, addTopicShape } from '#server/readings/add-topic';
import { changeBrokerShape, changeReadingBroker } from '#server/readings/change-broker';
import { endReadingSource, endSourceShape } from '#server/readings/end-source';
import { endBrokerTopic, endTopicShape } from '#server/readings/end-topic';
import { makeBrokerShape, makeReadingBroker } from '#server/readings/make-broker';
import { makeReadingSource, makeSourceShape } from '#server/readings/make-source';
import { nameSensor, nameSensorShape, unnameSensor, unnameSensorShape } from '#server/readings/name-sensor';

/** The page one is on says something else once one of these is done. */
const here = () => ['/'];

export const makeSourceAction = act(makeSourceShape, makeReadingSource, here);

export const endSourceAction = act(endSourceShape, endReadingSource, here, { always: true });

export const makeBrokerAction = act(makeBrokerShape, makeReadingBroker, here);

export const changeBrokerAction = act(changeBrokerShape, changeReadingBroker, here);

export const addTopicAction = act(addTopicShape, addBrokerTopic, here);

export const endTopicAction = act(endTopicShape, endBrokerTopic, here, { always: true });

export const nameSensorAction = act(nameSensorShape, nameSensor, here);

export const unnameSensorAction = act(unnameSensorShape, unnameSensor, here);
