'use server';

import { act } from '#server/gate/act';
import { giveHandover, giveHandoverShape } from '#server/handover/give-handover';
import {
  takeHandover,
  takeHandoverHere,
  takeHandoverHereShape,
  takeHandoverShape,
} from '#server/handover/take-handover';
import { endAnimalWatchShape, endWatch, watchAnimal, watchAnimalShape } from '#server/handover/watch-animal';

/** Pages that show something else then. */
const shown = ({ site }: { site: string }) => [`/sites/${site}/handover`];

export const giveHandoverAction = act(giveHandoverShape, giveHandover, shown);

export const takeHandoverAction = act(takeHandoverShape, takeHandover, shown);

export const takeHandoverHereAction = act(takeHandoverHereShape, takeHandoverHere, shown);

export const watchAnimalAction = act(watchAnimalShape, watchAnimal, shown);

export const endAnimalWatchAction = act(endAnimalWatchShape, endWatch, shown);
