import 'server-only';
import { ok, refused } from '#core/result';
import { keepSheetDraft } from '#data/rounds/sheet-drafts';
import { type WriteSheetRequest, writeSheetRequest } from '#shape/rounds/sheet-requests';
import type { Who } from '../../gate/who';
import { changeSheets, type SheetsChanged } from './change-sheets';
import { putInForce } from './put-sheets-in-force';

export const writeSheetShape = writeSheetRequest;

/** Keeps the draft of a sheet, and puts it into force where that is asked for. */
export async function writeSheet(
  who: Who,
  { site, body: sheet, basedOn: from, put, why }: WriteSheetRequest,
): Promise<SheetsChanged> {
  return await changeSheets(who, site, async (held) => {
    const basedOn = from ?? null;
    const version = held.inForce.find(({ key }) => key === sheet.key)?.version ?? null;
    if (version !== basedOn)
      return refused({
        why: 'conflict',
        now: `${sheet.name} was changed since you began: version ${version ?? 'none'} is in force. What you wrote is still here; look at what is in force in another window.`,
      });
    const draft = { sheet, basedOn, changedAt: held.at, changedBy: who.id };
    await keepSheetDraft(held.tx, held.site.id, draft);
    if (put === undefined) return ok(null);
    const drafts = new Map(held.drafts).set(sheet.key, draft);
    return await putInForce(who, { ...held, drafts }, [sheet.key], why ?? null);
  });
}
