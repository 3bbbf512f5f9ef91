'use server';

import { act } from '#server/gate/act';
import { lookAtFile, lookAtFileShape } from '#server/readings/file/look-at-file';
import { takeInFile, takeInFileShape } from '#server/readings/file/take-in-file';

export const lookAtFileAction = act(lookAtFileShape, lookAtFile, () => [], { always: true, asBytes: true });

export const takeInFileAction = act(takeInFileShape, takeInFile, ({ site }) => [`/sites/${site.key}/readings`], {
  asBytes: true,
});
