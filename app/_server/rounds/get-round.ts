import 'server-only';
import { groupBy } from '#core/group-by';
import { isAbnormal } from '#core/rounds/abnormal';
import { type Entry, standingEntries } from '#core/rounds/entry';
import { byTwo } from '#core/rounds/by-two';
import { NOTHING_STANDS } from '#core/rounds/pack';
import { tooQuick } from '#core/rounds/pace';
import type { UsedRate } from '#core/rounds/rate';
import { checksOf } from '#core/rounds/sheet';
import { ok, type Result, refused } from '#core/result';
import { accountNames } from '#data/accounts/names';
import { newId } from '#data/new-id';
import { type Circumstances, circumstancesOf } from '#data/rounds/circumstances';
import { listEntries } from '#data/rounds/entries';
import { findRound } from '#data/rounds/round-row';
import { listSignatures, looksTakenBack } from '#data/rounds/signatures';
import { type RoundAddress, roundAddress } from '#shape/rounds/requests';
import { now } from '../clock';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { findStoredSite } from '../reviews/find-stored-site';
import { beforeOf } from './before-of';
import { ratesOn } from './find-use';
import { unmovedOn } from './unmoved-on';
import type { LastValue, RoundPage, ToldEntry, ToldLine, ToldPlace } from './round-page';
import { whatStands } from './what-stands';

export const getRoundShape = roundAddress;

/** A round with its sheet, what was recorded on it and by whom, and what was there before. */
export async function getRound(who: Who, { site: key, round: id }: RoundAddress): Promise<Result<RoundPage, Refusal>> {
  const found = await findStoredSite(who, 'see', key);
  if (!found.ok) return found;
  const { entry: site, stored, today } = found.value;
  const round = await findRound(site.id, id);
  if (!round) return refused({ why: 'not-found', what: 'round' });
  const [entries, signatures, taken, besides] = await Promise.all([
    listEntries(site.id, id),
    listSignatures(site.id, id),
    looksTakenBack(site.id, id),
    circumstancesOf(site.id, id),
  ]);
  const checks = checksOf(round.sheet);
  const standing = standingEntries(entries);
  const [{ lasts, alike }, rates, unmoved] = await Promise.all([
    beforeOf(site, round, checks, standing),
    ratesOn(site, checks, standing),
    signatures.length > 0 ? unmovedOn(site, round, checks, standing) : [],
  ]);
  const names = await accountNames([
    round.begunBy,
    ...entries.map(({ by }) => by),
    ...signatures.map(({ by }) => by),
    ...taken.flatMap((one) => [one.by, one.taken.by]),
  ]);
  const nameOf = (account: string) => names.get(account) ?? account;
  const [foreign, own] = split(toldEntries(entries, besides, nameOf), ({ id: entry }) => besides.get(entry)?.line);
  const told = groupBy(own, ({ check }) => check);
  const stands = await whatStands(site, stored.facility, today, now());
  const places = round.sheet.places.map(
    ({ name, system, cleanness, checks: lines }, index): ToldPlace => ({
      ...{ number: index + 1, name, system, cleanness, stands: stands(system?.key ?? null) },
      lines: lines.map((check) =>
        toldLine(check, told.get(check.key) ?? [], lasts.get(check.key) ?? [], rates.get(check.key)),
      ),
    }),
  );
  const asTheyWere = foreignPlace(foreign, besides, places.length + 1);
  if (asTheyWere) places.push(asTheyWere);
  return ok({
    site: { key: site.key, name: site.name, zone: site.zone },
    round: {
      id,
      name: round.name,
      isBesides: round.slotId === null && round.sheetId === null,
      dueAt: round.dueAt.toISOString(),
      begun: { at: round.begunAt.toISOString(), by: nameOf(round.begunBy) },
      signed: signatureOf(signatures, 'signed', nameOf),
      second: signatureOf(signatures, 'second', nameOf),
      byTwo: byTwo(round.sheet),
      secondLook: signatureOf(signatures, 'second-look', nameOf),
      looksTaken: taken.map(({ at, by, note, taken: back }) => ({
        ...{ at: at.toISOString(), by: nameOf(by), note },
        taken: { at: back.at.toISOString(), by: nameOf(back.by), reason: back.reason },
      })),
    },
    places,
    systems: stored.facility.systems.map(({ key: system, name }) => ({ key: system, name })),
    nextCall: newId(),
    alike: alike.map(({ key: line }) => line),
    unmoved,
    quick: tooQuick(round.sheet.places, entries),
    wasAt: placeOf(
      places,
      entries.findLast(({ by }) => by === who.id),
    ),
    self: who.name,
    isSigner: signatures.some(({ kind, by }) => kind === 'signed' && by === who.id),
    mayWalk: may(who, 'walk', site.key),
    mayLook: may(who, 'second-look', site.key),
  });
}

function signatureOf(
  signatures: Awaited<ReturnType<typeof listSignatures>>,
  kind: 'signed' | 'second' | 'second-look',
  nameOf: (id: string) => string,
) {
  const done = signatures.find((one) => one.kind === kind);
  return done ? { id: done.id, at: done.at.toISOString(), by: nameOf(done.by), note: done.note } : null;
}

/** Entries as they are told. */
function toldEntries(
  entries: readonly Entry[],
  besides: ReadonlyMap<string, Circumstances>,
  nameOf: (id: string) => string,
): ToldEntry[] {
  return entries.map(({ by, atMs, ...entry }) => {
    const { photos = [], clockOffS = null } = besides.get(entry.id) ?? {};
    return { ...entry, at: new Date(atMs).toISOString(), by: nameOf(by), photos, clockOffS };
  });
}

/** Those of which something holds, and the others. */
function split<T>(all: readonly T[], holds: (one: T) => unknown): [T[], T[]] {
  return [all.filter((one) => holds(one)), all.filter((one) => !holds(one))];
}

/** Lines that were entered out of reach and that the sheet no longer has, as they were; null when there are none. */
function foreignPlace(
  entries: readonly ToldEntry[],
  besides: ReadonlyMap<string, Circumstances>,
  number: number,
): ToldPlace | null {
  const lines = [...groupBy(entries, ({ check }) => check).values()].flatMap((of) => {
    const check = besides.get(of[0]?.id ?? '')?.line;
    return check ? [toldLine(check, of, [])] : [];
  });
  const name = 'Lines that the sheet had when they were entered';
  return lines.length === 0 ? null : { number, name, system: null, cleanness: 4, stands: NOTHING_STANDS, lines };
}

function toldLine(
  check: ToldLine['check'],
  entries: ToldEntry[],
  before: LastValue[],
  rate: UsedRate | null = null,
): ToldLine {
  const value = entries.at(-1)?.value;
  return {
    check,
    entries,
    last: before[0] ?? null,
    before,
    isAbnormal: value ? isAbnormal(check, value, rate) : false,
    rate,
    nextEntry: newId(),
    nextPhoto: newId(),
  };
}

/** Where somebody has last been on a round. */
function placeOf(places: readonly ToldPlace[], entry: Entry | undefined): RoundPage['wasAt'] {
  const place = places.find(({ lines }) => lines.some(({ check }) => check.key === entry?.check));
  return place ? { name: place.name, cleanness: place.cleanness } : null;
}
