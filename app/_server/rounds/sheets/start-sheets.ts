import 'server-only';
import { startingSheets } from '#core/rounds/starting-sheets';
import { ok, refused } from '#core/result';
import { keepSheetDraft } from '#data/rounds/sheet-drafts';
import { type StartSheetsRequest, startSheetsRequest } from '#shape/rounds/sheet-requests';
import type { Who } from '../../gate/who';
import { dayIn } from '../../local-day';
import { changeSheets, type SheetsChanged } from './change-sheets';

export const startSheetsShape = startSheetsRequest;

/** Drafts the sheets that a system may start with. Those that are in force or being written already are left as they are. */
export async function startSheets(who: Who, { site, system }: StartSheetsRequest): Promise<SheetsChanged> {
  return await changeSheets(who, site, async ({ tx, site: entry, facility, drafts, inForce, at }) => {
    if (system !== undefined && !facility.systems.some(({ key }) => key === system))
      return refused({ why: 'not-found', what: 'system' });
    const sheets = startingSheets(facility, system ?? null, dayIn(entry.zone, at));
    const fresh = sheets.filter(({ key }) => !drafts.has(key) && !inForce.some((one) => one.key === key));
    if (fresh.length === 0)
      return refused({
        why: 'conflict',
        now:
          sheets.length === 0
            ? 'Nothing that a sheet could hold is described yet.'
            : 'Each of its starting sheets is there already, in force or as a draft.',
      });
    for (const sheet of fresh)
      await keepSheetDraft(tx, entry.id, { sheet, basedOn: null, changedAt: at, changedBy: who.id });
    return ok(null);
  });
}
