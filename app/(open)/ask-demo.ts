import { askOpenly } from '#server/gate/open';
import { demoHere, demoHereShape } from '#server/sign-in/demo-here';

/** Whether a site of the demonstration is there, for the pages that know nobody. */
export const askDemo = askOpenly(demoHereShape, demoHere);
