import 'server-only';
import type { Facility } from '#core/facility/facility';
import type { SheetStanding } from '#core/rounds/sheet-standings';
import type { RoundLine, Tell } from '../list-rounds';
import type { SheetRound } from './sheets-standing';

const WEEK_MS = 7 * 86_400_000;

/** A due time of a kept sheet, with what the sheet is called. */
type NamedStanding = SheetStanding<SheetRound> & { name: string };

/** Due times of kept sheets that are open, and those of the past week that were done or missed. */
export function recentSheets(
  standings: readonly SheetStanding<SheetRound>[],
  facility: Facility,
  at: Date,
): NamedStanding[] {
  const names = new Map(facility.sheets?.map(({ key, name }) => [key, name]));
  const since = at.getTime() - WEEK_MS;
  return standings
    .filter(({ standing, round, dueAt, closesAt }) => {
      if (standing === 'ahead') return false;
      if (standing === 'missed') return round !== null || closesAt >= since;
      return standing !== 'done' || dueAt >= since || (round?.signedAt ?? 0) >= since;
    })
    .map((one) => ({ ...one, name: names.get(one.sheet) ?? one.sheet }));
}

/** A due time of a kept sheet as a line of the list of rounds. */
export function sheetLine({ sheet, name, dueAt, lateAt, standing, round }: NamedStanding, told: Tell): RoundLine {
  return {
    slot: null,
    sheet,
    name: round?.name ?? name,
    dueAt: new Date(dueAt).toISOString(),
    lateAt: new Date(lateAt).toISOString(),
    standing,
    round: round?.id ?? null,
    begun: round && told({ at: new Date(round.begunAt), by: round.begunBy }),
    signed: told(round?.signed),
    secondLook: told(round?.secondLook),
    wantsSecond: round?.wantsSecond ?? false,
    systems: null,
  };
}
