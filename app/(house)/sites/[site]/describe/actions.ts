'use server';

import { keepChange, keepChangeShape } from '#server/describe/keep-change';
import { previewChange, previewChangeShape, reviewChange } from '#server/describe/preview-change';
import { act } from '#server/gate/act';

export const previewChangeAction = act(previewChangeShape, previewChange);

export const reviewChangeAction = act(previewChangeShape, reviewChange);

// No page is made anew with the answer: that of a thing which was retired or moved would be gone before it is said.
export const keepChangeAction = act(keepChangeShape, keepChange);
