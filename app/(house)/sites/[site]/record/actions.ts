'use server';

import { act } from '#server/gate/act';
import { verifyRecord, verifyRecordShape } from '#server/record/verify-record';

export const verifyRecordAction = act(verifyRecordShape, verifyRecord, () => [], { always: true });
