import 'server-only';
import { groupBy } from '#core/group-by';
import { describedPlaces } from '#core/rounds/described';
import { frequencyOf } from '#core/rounds/frequency';
import { sheetOfKept } from '#core/rounds/kept-sheet';
import type { RoundSheet } from '#core/rounds/round-sheet';
import { ok, type Result } from '#core/result';
import { accountNames } from '#data/accounts/names';
import { countMissedSheets } from '#data/rounds/missed-sheets';
import { listSheetDrafts } from '#data/rounds/sheet-drafts';
import { listSheetsInForce } from '#data/rounds/sheet-versions';
import { siteRounds } from '#shape/rounds/requests';
import { now } from '../../clock';
import { may } from '../../gate/may';
import type { Refusal } from '../../gate/refusal';
import type { Who } from '../../gate/who';
import { findStoredSite } from '../../reviews/find-stored-site';
import type { SheetsPage } from './sheets-page';
import { sheetsStanding } from './sheets-standing';

export const listSheetsShape = siteRounds;

const DAY_MS = 86_400_000;
/** Days ahead that are listed time by time. */
const AHEAD_DAYS = 60;

/** The sheets of a site: those in force with when they are due, and those being written. */
export async function listSheets(who: Who, { site: key }: { site: string }): Promise<Result<SheetsPage, Refusal>> {
  const found = await findStoredSite(who, 'see', key);
  if (!found.ok) return found;
  const { entry: site, stored, today } = found.value;
  const at = now();
  const { facility } = stored;
  const [inForce, drafts, standings, missed] = await Promise.all([
    listSheetsInForce(site.id),
    listSheetDrafts(site.id),
    sheetsStanding(site, facility, at),
    countMissedSheets(site.id, at),
  ]);
  const names = await accountNames([...drafts.values()].map(({ changedBy }) => changedBy));
  const described = describedPlaces(facility, today);
  const [versions, standingOf] = [
    new Map(inForce.map((one) => [one.key, one])),
    groupBy(standings, ({ sheet }) => sheet),
  ];
  const sheets = (facility.sheets ?? []).map((sheet) => {
    const version = versions.get(sheet.key);
    const own = standingOf.get(sheet.key) ?? [];
    const open = own.find(({ standing }) => standing === 'due' || standing === 'late' || standing === 'begun');
    const next = own.find(({ standing }) => standing === 'ahead');
    return {
      ...summary(sheet),
      version: version?.version ?? 0,
      since: version?.inForceFrom.toISOString() ?? null,
      gone: sheetOfKept(facility, sheet, today, described).gone.length,
      open: open ? { standing: open.standing, dueAt: new Date(open.dueAt).toISOString() } : null,
      next: next ? new Date(next.dueAt).toISOString() : null,
      missed: missed.get(sheet.key) ?? 0,
    };
  });
  const until = at.getTime() + AHEAD_DAYS * DAY_MS;
  return ok({
    site: { key: site.key, name: site.name, zone: site.zone },
    sheets,
    drafts: [...drafts.values()].map(({ sheet, basedOn, changedAt, changedBy }) => ({
      ...summary(sheet),
      basedOn,
      changed: { at: changedAt.toISOString(), by: names.get(changedBy) ?? changedBy },
    })),
    ahead: standings
      .filter(({ standing, dueAt }) => standing === 'ahead' && dueAt <= until)
      .map(({ sheet, dueAt }) => ({ sheet, dueAt: new Date(dueAt).toISOString() })),
    systems: facility.systems.map((system) => ({ key: system.key, name: system.name })),
    mayChange: may(who, 'describe', site.key),
  });
}

function summary(sheet: RoundSheet) {
  const { key, name, schedule, lines, signedBy = null, secondSignature = false } = sheet;
  return {
    key,
    name,
    schedule,
    frequency: frequencyOf(schedule),
    lines: lines.length,
    signedBy,
    second: secondSignature,
  };
}
