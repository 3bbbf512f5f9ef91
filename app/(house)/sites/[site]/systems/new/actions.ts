'use server';

import { act } from '#server/gate/act';
import { previewStart, previewStartShape } from '#server/start/begin-system';
import { keepStart, keepStartShape } from '#server/start/keep-start';

export const previewStartAction = act(previewStartShape, (who, input) => previewStart(who, input));

export const keepStartAction = act(keepStartShape, keepStart, ({ site }) => ['/', `/sites/${site}`]);
