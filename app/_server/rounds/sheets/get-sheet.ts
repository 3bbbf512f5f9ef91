import 'server-only';
import { describedPlaces } from '#core/rounds/described';
import { sheetOfKept } from '#core/rounds/kept-sheet';
import { quietNote } from '#core/rounds/quiet-sheet';
import { ok, type Result, refused } from '#core/result';
import { accountNames } from '#data/accounts/names';
import { listSheetDrafts } from '#data/rounds/sheet-drafts';
import { listSheetVersions } from '#data/rounds/sheet-versions';
import { type SheetAddress, sheetAddress } from '#shape/rounds/sheet-requests';
import { may } from '../../gate/may';
import type { Refusal } from '../../gate/refusal';
import type { Who } from '../../gate/who';
import { findStoredSite } from '../../reviews/find-stored-site';
import type { SheetPage } from './sheets-page';

export const getSheetShape = sheetAddress;

/** Days ahead that are looked through for loud tests in quiet hours: the longest that tests usually lie apart, and a quarter more. */
const QUIET_DAYS = 460;

/** One sheet: as it is being written, else as it is in force, with its versions and every line that the description offers. */
export async function getSheet(who: Who, { site: at, sheet: key }: SheetAddress): Promise<Result<SheetPage, Refusal>> {
  const found = await findStoredSite(who, 'see', at);
  if (!found.ok) return found;
  const { entry: site, stored, today } = found.value;
  const { facility } = stored;
  const [drafts, versions] = await Promise.all([listSheetDrafts(site.id), listSheetVersions(site.id, key)]);
  const draft = drafts.get(key);
  const inForce = facility.sheets?.find((one) => one.key === key);
  const sheet = draft?.sheet ?? inForce;
  if (!sheet) return refused({ why: 'not-found', what: 'sheet' });
  const names = await accountNames(versions.flatMap(({ by }) => by ?? []));
  const version = inForce ? (versions[0]?.version ?? null) : null;
  return ok({
    site: { key: site.key, name: site.name, zone: site.zone },
    sheet,
    isDraft: draft !== undefined,
    version,
    basedOn: draft ? draft.basedOn : version,
    versions: versions.map(({ version: one, inForceFrom, by, reason }) => ({
      version: one,
      at: inForceFrom.toISOString(),
      by: (by && (names.get(by) ?? by)) ?? '–',
      reason,
    })),
    places: describedPlaces(stored.reviewed, today),
    systems: facility.systems.map(({ key: system, name, tanks }) => ({
      key: system,
      name,
      tanks: tanks.map((tank) => ({ key: tank.key, name: tank.name })),
    })),
    gone: sheetOfKept(facility, sheet, today).gone,
    quiet: quietNote(facility, sheet, today, QUIET_DAYS),
    mayChange: may(who, 'describe', site.key),
  });
}
