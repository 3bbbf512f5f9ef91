'use server';

import { act } from '#server/gate/act';
import { dropSheetDraft, dropSheetDraftShape } from '#server/rounds/sheets/drop-sheet-draft';
import { putSheetsInForce, putSheetsInForceShape } from '#server/rounds/sheets/put-sheets-in-force';
import { retireSheet, retireSheetShape } from '#server/rounds/sheets/retire-sheet';
import { startSheets, startSheetsShape } from '#server/rounds/sheets/start-sheets';
import { writeSheet, writeSheetShape } from '#server/rounds/sheets/write-sheet';

/** Pages that show something else once sheets have changed. */
const shown = ({ site }: { site: string }) => [`/sites/${site}/rounds`, `/sites/${site}/rounds/sheets`];

export const startSheetsAction = act(startSheetsShape, startSheets, shown);

export const writeSheetAction = act(writeSheetShape, writeSheet, shown);

export const putSheetsAction = act(putSheetsInForceShape, putSheetsInForce, shown);

export const dropSheetDraftAction = act(dropSheetDraftShape, dropSheetDraft, shown);

export const retireSheetAction = act(retireSheetShape, retireSheet, shown);
