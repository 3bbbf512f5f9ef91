import 'server-only';
import { ok, refused } from '#core/result';
import { dropSheetDrafts } from '#data/rounds/sheet-drafts';
import { type SheetAddress, sheetAddress } from '#shape/rounds/sheet-requests';
import type { Who } from '../../gate/who';
import { changeSheets, type SheetsChanged } from './change-sheets';

export const dropSheetDraftShape = sheetAddress;

/** Forgets a draft; what is in force stays. */
export async function dropSheetDraft(who: Who, { site, sheet }: SheetAddress): Promise<SheetsChanged> {
  return await changeSheets(who, site, async ({ tx, site: entry, drafts }) => {
    if (!drafts.has(sheet)) return refused({ why: 'not-found', what: 'draft of the sheet' });
    await dropSheetDrafts(tx, entry.id, [sheet]);
    return ok(null);
  });
}
