'use server';

import { actOpenly } from '#server/gate/open';
import { askReset, askResetShape } from '#server/sign-in/ask-reset';

export const askResetAction = actOpenly(askResetShape, askReset);
