import 'server-only';
import { refused } from '#core/result';
import { type RetireSheetRequest, retireSheetRequest } from '#shape/rounds/sheet-requests';
import type { Who } from '../../gate/who';
import { changeSheets, keepSheets, type SheetsChanged } from './change-sheets';

export const retireSheetShape = retireSheetRequest;

/** Takes a sheet out of force. Its versions, and the rounds that walked it, stay. */
export async function retireSheet(who: Who, { site, sheet: key, why }: RetireSheetRequest): Promise<SheetsChanged> {
  return await changeSheets(who, site, async (held) => {
    const sheet = held.inForce.find((one) => one.key === key);
    if (!sheet) return refused({ why: 'not-found', what: 'sheet' });
    return await keepSheets(who, held, {
      sheets: (held.facility.sheets ?? []).filter((one) => one.key !== key),
      why,
      told: () => [{ kind: 'sheet-retired', body: { by: who.id, sheet: sheet.id, version: sheet.version, why } }],
    });
  });
}
