'use server';

import { act } from '#server/gate/act';
import { putBack, putBackShape } from '#server/safeguards/put-back';
import { recordTest, recordTestShape } from '#server/safeguards/record-test';
import { takeOff, takeOffShape } from '#server/safeguards/take-off';
import { withdrawTest, withdrawTestShape } from '#server/safeguards/withdraw-test';

/** Pages that show something else once a safeguard has changed. */
const shown = ({ site, system, safeguard }: { site: string; system: string; safeguard: string }) => [
  '/',
  `/sites/${site}`,
  `/sites/${site}/safeguards`,
  `/sites/${site}/safeguards/${system}/${safeguard}`,
];

export const recordTestAction = act(recordTestShape, recordTest, shown);

export const withdrawTestAction = act(withdrawTestShape, withdrawTest, shown);

export const takeOffAction = act(takeOffShape, takeOff, shown);

export const putBackAction = act(putBackShape, putBack, shown);
