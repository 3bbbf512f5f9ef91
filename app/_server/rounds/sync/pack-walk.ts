import 'server-only';
import { byTwo } from '#core/rounds/by-two';
import { walksDue } from '#core/rounds/due';
import { LOOK_BACK } from '#core/rounds/questions';
import { type LastSeen, PACK_FORMAT, type PackedEntry, type PackedWalk, type WalkPack } from '#core/rounds/pack';
import { checksOf, type Sheet, SHEET_FORMAT, type SheetPlace, sheetOf } from '#core/rounds/sheet';
import { ok, type Result } from '#core/result';
import { addDays } from '#core/time/add-days';
import { dayStart } from '#core/time/zone';
import { accountNames } from '#data/accounts/names';
import { latestOf } from '#data/readings/series';
import { listBefore } from '#data/rounds/entries';
import type { RoundRow } from '#data/rounds/list-rounds';
import { sensorIds } from '#data/rounds/round-row';
import { listWithEntries, type WithEntries } from '#data/rounds/with-entries';
import { inTransaction } from '#data/transaction';
import { siteRounds } from '#shape/rounds/requests';
import { now } from '../../clock';
import { isAtLeast } from '../../gate/may';
import type { Refusal } from '../../gate/refusal';
import type { Who } from '../../gate/who';
import { dayIn } from '../../local-day';
import { findStoredSite, type SiteToday } from '../../reviews/find-stored-site';
import { roundsStanding } from '../rounds-standing';
import { whatStands } from '../what-stands';
import { openSheets } from './open-sheets';

export const packWalkShape = siteRounds;

/** A walk that goes along, with the sheet it would be begun on. Times in ms since 1970. */
export interface OpenWalk {
  slot: string;
  name: string;
  dueAt: number;
  opensAt: number;
  lateAt: number;
  closesAt: number;
  round: (Pick<RoundRow, 'id' | 'begunBy' | 'signed' | 'wantsSecond'> & { begunAt: number }) | null;
  places: SheetPlace[];
  signing?: Sheet['signing'];
}

/** What a telephone takes along to walk the rounds of a site out of reach. */
export async function packWalk(who: Who, { site: key }: { site: string }): Promise<Result<WalkPack, Refusal>> {
  const found = await findStoredSite(who, 'walk', key);
  if (!found.ok) return found;
  const { entry: site, stored, today } = found.value;
  const at = now();
  const standing = await roundsStanding(site, stored.facility, at);
  const ofToday = standing.walks.filter(
    ({ standing: how, round }) => (how !== 'done' || round?.wantsSecond) && (how !== 'missed' || round),
  );
  // A night may be walked out of reach as a whole: what tomorrow brings comes along.
  const { rounds, shifts } = stored.facility;
  const next = walksDue(rounds, site.zone, addDays(today, 1), addDays(today, 2), shifts);
  const ofSlots = [...ofToday, ...next.map((walk) => ({ ...walk, round: null }))].map(({ slot, ...walk }): OpenWalk => {
    const day = dayIn(site.zone, new Date(walk.dueAt));
    return { ...walk, slot: slot.key, name: slot.name, places: sheetOf(stored.facility, slot, day).places };
  });
  const ofSheets = await openSheets(site, stored.reviewed, at, dayStart(site.zone, addDays(today, 2)));
  const open = [...ofSlots, ...ofSheets].sort((a, b) => a.dueAt - b.dueAt);
  const begun = await listWithEntries(
    site.id,
    open.flatMap(({ round }) => round?.id ?? []),
  );
  const names = await accountNames([
    ...begun.flatMap(({ entries }) => entries.map(({ by }) => by)),
    ...open.flatMap(({ round }) => (round ? [round.begunBy, ...(round.signed ? [round.signed.by] : [])] : [])),
  ]);
  const walks = open.map((walk) => packed(walk, begun, { who, site: site.key, nameOf: (id) => names.get(id) ?? id }));
  const besides = stored.facility.rounds.map((slot) => ({
    slot: slot.key,
    name: slot.name,
    places: sheetOf(stored.facility, slot, today).places,
  }));
  const stands = await whatStands(site, stored.facility, today, at);
  return ok({
    format: PACK_FORMAT,
    account: { id: who.id, name: who.name },
    site: { key: site.key, name: site.name, zone: site.zone },
    at: at.toISOString(),
    walks,
    besides,
    systems: stored.facility.systems.map(({ key, name }) => ({ key, name })),
    stands: Object.fromEntries(
      [null, ...stored.facility.systems.map((system) => system.key)].map((system) => [system ?? '-', stands(system)]),
    ),
    lasts: await lastsOf(found.value, [...walks, ...besides], at),
  });
}

function packed(
  { slot, name, dueAt, opensAt, lateAt, closesAt, round, places, signing }: OpenWalk,
  begun: readonly WithEntries[],
  { who, site, nameOf }: { who: Who; site: string; nameOf: (id: string) => string },
): PackedWalk {
  const kept = begun.find(({ id }) => id === round?.id);
  const entries = (kept?.entries ?? []).map(
    ({ atMs, by, ...entry }): PackedEntry => ({ ...entry, at: new Date(atMs).toISOString(), by: nameOf(by) }),
  );
  return {
    slot,
    name,
    due: new Date(dueAt).toISOString(),
    opensAt: new Date(opensAt).toISOString(),
    lateAt: new Date(lateAt).toISOString(),
    closesAt: new Date(closesAt).toISOString(),
    round: round?.id ?? null,
    begun: round && { at: new Date(round.begunAt).toISOString(), by: nameOf(round.begunBy) },
    ...(round?.signed && { signed: signedOf(round.signed, who, nameOf) }),
    ...signingOf(kept?.sheet ?? { format: SHEET_FORMAT, places, ...(signing && { signing }) }, who, site),
    places: kept?.sheet.places ?? places,
    entries,
  };
}

function signedOf({ at, by }: NonNullable<RoundRow['signed']>, who: Who, nameOf: (id: string) => string) {
  return { at: at.toISOString(), by: nameOf(by), isOwn: by === who.id };
}

/** What is asked of the signatures of a walk, where it is more than one by whoever walked it. */
function signingOf(sheet: Sheet, who: Who, site: string): Pick<PackedWalk, 'signing'> {
  const [two, by] = [byTwo(sheet), sheet.signing?.by ?? null];
  if (two === null && by === null) return {};
  return { signing: { byTwo: two, by, hasRole: by === null || isAtLeast(who, by, site) } };
}

/** What is known of each line: the newest that its sensor gave by itself, and what stood on the rounds before. */
async function lastsOf(
  { entry: site, stored }: SiteToday,
  walks: readonly Pick<PackedWalk, 'places'>[],
  at: Date,
): Promise<Record<string, LastSeen[]>> {
  const checks = walks.flatMap(({ places }) => checksOf({ format: 'holdfast.sheet/1', places }));
  const keys = [...new Set(checks.map(({ key }) => key))];
  const systems = stored.facility.systems.map(({ key }) => key);
  const [before, latest, ids] = await Promise.all([
    listBefore(site.id, at, keys, LOOK_BACK),
    latestOf(site.id),
    inTransaction((tx) => sensorIds(tx, site.id, systems)),
  ]);
  const lasts = new Map<string, LastSeen[]>();
  for (const key of keys) {
    const seen = (before.get(key) ?? []).map(({ value, at: when }): LastSeen => {
      return { value, at: when.toISOString(), from: 'round' };
    });
    if (seen.length > 0) lasts.set(key, seen);
  }
  for (const check of checks) {
    const id = check.kind === 'number' ? ids.get(`${check.about.system}/${check.about.key}`) : undefined;
    const reading = id === undefined ? undefined : latest.get(id);
    if (!reading || reading.origin === 'hand') continue;
    const { value, quality, atMs } = reading;
    const own: LastSeen = {
      value: { kind: 'number', value, quality },
      at: new Date(atMs).toISOString(),
      from: 'sensor',
    };
    lasts.set(check.key, [own, ...(lasts.get(check.key) ?? []).filter(({ from }) => from === 'round')]);
  }
  return Object.fromEntries(lasts);
}
