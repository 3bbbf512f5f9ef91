'use server';

import { keepChange, keepChangeShape } from '#server/describe/keep-change';
import { previewChange, previewChangeShape, reviewChange } from '#server/describe/preview-change';
import { act } from '#server/gate/act';

export const previewChangeAction = act(previewChangeShape, previewChange);

export const reviewChangeAction = act(previewChangeShape, reviewChange);

export const keepChangeAction = act(keepChangeShape, keepChange, ({ site }) => ['/', `/sites/${site}`]);
