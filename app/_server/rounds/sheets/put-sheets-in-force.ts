import 'server-only';
import type { RoundSheet } from '#core/rounds/round-sheet';
import { type Result, refused } from '#core/result';
import { dropSheetDrafts } from '#data/rounds/sheet-drafts';
import { type PutSheetsRequest, putSheetsRequest } from '#shape/rounds/sheet-requests';
import type { Refusal } from '../../gate/refusal';
import type { Who } from '../../gate/who';
import { changeSheets, type HeldSheets, keepSheets, type SheetsChanged } from './change-sheets';

export const putSheetsInForceShape = putSheetsRequest;

/** Puts drafts into force, each as the next version of its sheet. A round that runs keeps the version it was begun with. */
export async function putSheetsInForce(
  who: Who,
  { site, sheets: keys, why }: PutSheetsRequest,
): Promise<SheetsChanged> {
  return await changeSheets(who, site, async (held) => await putInForce(who, held, keys, why ?? null));
}

/** Puts drafts into force, in a transaction that holds the site. */
export async function putInForce(
  who: Who,
  held: HeldSheets,
  keys: readonly string[],
  why: string | null,
): Promise<Result<null, Refusal>> {
  const { tx, site, facility, drafts, inForce } = held;
  const put: RoundSheet[] = [];
  for (const key of keys) {
    const draft = drafts.get(key);
    if (!draft) return refused({ why: 'not-found', what: 'draft of the sheet' });
    const version = inForce.find((one) => one.key === key)?.version ?? null;
    if (version !== draft.basedOn)
      return refused({
        why: 'conflict',
        now: `${draft.sheet.name} was changed since this draft was begun: version ${version ?? 'none'} is in force. Look at it, and save the draft again.`,
      });
    put.push(draft.sheet);
  }
  const before = facility.sheets ?? [];
  const sheets = [
    ...before.map((one) => put.find(({ key }) => key === one.key) ?? one),
    ...put.filter(({ key }) => !before.some((one) => one.key === key)),
  ];
  const kept = await keepSheets(who, held, {
    sheets,
    why,
    told: (now) =>
      now
        .filter(({ key }) => keys.includes(key))
        .map(({ id, version }) => ({
          kind: 'sheet-in-force',
          body: { by: who.id, sheet: id, version, ...(why && { why }) },
        })),
  });
  if (kept.ok) await dropSheetDrafts(tx, site.id, keys);
  return kept;
}
