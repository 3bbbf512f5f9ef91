import 'server-only';
import type { Standing } from '#core/rounds/due';
import { ok, type Result } from '#core/result';
import { accountNames } from '#data/accounts/names';
import type { WalkStanding } from '#core/rounds/standings';
import { newId } from '#data/new-id';
import type { RoundRow } from '#data/rounds/list-rounds';
import { siteRounds } from '#shape/rounds/requests';
import { now } from '../clock';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { findStoredSite } from '../reviews/find-stored-site';
import { listUnsigned, type Unsigned } from './list-unsigned';
import { listWaiting, type Waiting } from './list-waiting';
import { roundsStanding, type SlotRound } from './rounds-standing';
import { recentSheets, sheetLine } from './sheets/sheet-lines';

/** A walk of the timetable, or one besides it. */
export interface RoundLine {
  /** Key of the slot; null for a walk besides the timetable. */
  slot: string | null;
  /** Key of the kept sheet; null for a walk of the timetable or besides. */
  sheet: string | null;
  name: string;
  /** UTC, ISO. */
  dueAt: string;
  lateAt: string | null;
  standing: Standing;
  /** The round, once it was begun. */
  round: string | null;
  begun: { at: string; by: string } | null;
  signed: { at: string; by: string } | null;
  secondLook: { at: string; by: string } | null;
  /** Whether it is signed, and somebody else is to sign it as well. */
  wantsSecond: boolean;
  /** Systems it passes; null for all. */
  systems: string[] | null;
}

/** The rounds of a site. */
export interface RoundsPage {
  site: { key: string; name: string; zone: string };
  /** UTC, ISO. */
  now: string;
  lines: RoundLine[];
  /** Slots whose sheet can be walked besides the timetable. */
  slots: { key: string; name: string }[];
  waiting: Waiting[];
  /** Rounds that were begun, never signed, and are none of the lines. */
  unsigned: Unsigned;
  mayWalk: boolean;
  mayLook: boolean;
  /** Id of the next round that is walked besides the timetable. */
  nextRound: string;
}

export const listRoundsShape = siteRounds;

/** The rounds of the past week and of today, the latest first, those that wait for a second look, and those nobody signed. */
export async function listRounds(who: Who, { site: key }: { site: string }): Promise<Result<RoundsPage, Refusal>> {
  const found = await findStoredSite(who, 'see', key);
  if (!found.ok) return found;
  const { entry: site, stored } = found.value;
  const at = now();
  const { walks, besides, sheets: standings } = await roundsStanding(site, stored.facility, at);
  const sheets = recentSheets(standings, stored.facility, at);
  const begun = [...[...walks, ...sheets].flatMap(({ round }) => round ?? []), ...besides];
  const names = await accountNames(
    begun.flatMap(({ begunBy, signed, secondLook }) =>
      [begunBy, signed?.by, secondLook?.by].filter((id) => id !== undefined),
    ),
  );
  const told: Tell = (done) => (done ? { at: done.at.toISOString(), by: names.get(done.by) ?? done.by } : null);
  const systemNames = new Map(stored.facility.systems.map((system) => [system.key, system.name]));
  const lines = [
    ...walks.map((walk) => walkLine(walk, told, systemNames)),
    ...sheets.map((due) => sheetLine(due, told)),
    ...besides.map((round) => besidesLine(round, told)),
  ];
  return ok({
    site: { key: site.key, name: site.name, zone: site.zone },
    now: at.toISOString(),
    lines: lines.sort((a, b) => (a.dueAt < b.dueAt ? 1 : -1)),
    slots: stored.facility.rounds.map(({ key: slot, name }) => ({ key: slot, name })),
    waiting: await listWaiting(site, begun),
    unsigned: await listUnsigned(
      site,
      begun.map(({ id }) => id),
    ),
    mayWalk: may(who, 'walk', site.key),
    mayLook: may(who, 'second-look', site.key),
    nextRound: newId(),
  });
}

/** Who did something and when, with their name. */
export type Tell = (done: { at: Date; by: string } | null | undefined) => RoundLine['begun'];

function walkLine(
  { slot, dueAt, lateAt, standing, round }: WalkStanding<SlotRound>,
  told: Tell,
  systemNames: ReadonlyMap<string, string>,
): RoundLine {
  return {
    slot: slot.key,
    sheet: null,
    name: slot.name,
    dueAt: new Date(dueAt).toISOString(),
    lateAt: new Date(lateAt).toISOString(),
    standing,
    round: round?.id ?? null,
    begun: round && told({ at: new Date(round.begunAt), by: round.begunBy }),
    signed: told(round?.signed),
    secondLook: told(round?.secondLook),
    wantsSecond: round?.wantsSecond ?? false,
    systems: slot.systems?.map((one) => systemNames.get(one) ?? one) ?? null,
  };
}

function besidesLine(round: RoundRow, told: Tell): RoundLine {
  return {
    slot: null,
    sheet: null,
    name: round.name,
    dueAt: round.dueAt.toISOString(),
    lateAt: null,
    standing: round.signed ? 'done' : 'begun',
    round: round.id,
    begun: told({ at: round.begunAt, by: round.begunBy }),
    signed: told(round.signed),
    secondLook: told(round.secondLook),
    wantsSecond: round.wantsSecond,
    systems: null,
  };
}
