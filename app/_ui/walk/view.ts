import { isAbnormal } from '#core/rounds/abnormal';
import { usedRate } from '#core/rounds/rate';
import type { Check } from '#core/rounds/check';
import { waiting } from '#core/rounds/outbox';
import { NOTHING_STANDS, type PackedEntry, type PackedWalk, type WalkPack } from '#core/rounds/pack';
import type { EntryView, LineView, PlaceView, RoundView } from '../rounds/round-view';
import { newId } from './device';
import type { BesidesWalk, Item, Kept, WalkName } from './store';

/** A walk as it stands on this telephone: of the timetable, or besides it. */
export interface OpenWalk extends Omit<PackedWalk, 'due' | 'opensAt' | 'lateAt' | 'closesAt'> {
  /** By which it is named when something on it is sent. */
  named: WalkName;
  timetable: Pick<PackedWalk, 'due' | 'opensAt' | 'lateAt' | 'closesAt'> | null;
  /** What was made on it here, in order. */
  items: Item[];
  /** When it was signed here; null when it was not. */
  signedAt: string | null;
}

/** What identifies a walk: its time in the timetable, or its own id. */
export function walkKey({ slot, due, round }: Pick<WalkName, 'slot' | 'due' | 'round'>): string {
  return due === null ? round : `${slot}@${due}`;
}

/** The walks that somebody can go on with, begin, or has signed here. */
export function openWalks({ items, walks }: Kept, pack: WalkPack): OpenWalk[] {
  return [
    ...pack.walks.map(({ due, opensAt, lateAt, closesAt, ...walk }) =>
      withItems({ ...walk, timetable: { due, opensAt, lateAt, closesAt } }, nameOf(walk, due, items), items),
    ),
    ...walks.map((walk) => withItems(besides(walk), { ...walk, due: null }, items)),
  ];
}

/** A walk that was begun by its timetable keeps its id; of one that nobody has begun, the first entry here makes one. */
function nameOf(
  { slot, name, round }: Pick<PackedWalk, 'slot' | 'name' | 'round'>,
  due: string,
  items: readonly Item[],
) {
  const made = items.find(({ walk }) => walk.slot === slot && walk.due === due)?.walk.round;
  return { slot, due, name, round: round ?? made ?? newId() };
}

function besides({ slot, name, places, begunAt, round }: BesidesWalk) {
  return { slot, name, places, round, begun: { at: begunAt, by: '' }, entries: [], timetable: null };
}

function withItems(
  walk: Omit<OpenWalk, 'named' | 'items' | 'signedAt'>,
  { round, slot, due, name }: WalkName,
  all: readonly Item[],
): OpenWalk {
  const named = { round, slot, due, name };
  const items = all
    .filter((item) => item.kind !== 'call' && walkKey(item.walk) === walkKey(named))
    .sort((a, b) => a.seq - b.seq);
  const sign = items.findLast(({ kind, state }) => kind === 'sign' && state !== 'refused');
  return { ...walk, named, items, signedAt: sign?.madeAt ?? null };
}

/** A walk as the pages of a round show it, with what was made here and has not arrived yet among what is known to be there. */
export function roundView(walk: OpenWalk, pack: WalkPack): RoundView {
  const entries = entriesOf(walk, pack);
  const begun = walk.begun?.at ?? null;
  // What was seen on this very walk is no last value of it.
  const before = (key: string) =>
    (pack.lasts[key] ?? []).filter(({ at, from }) => from === 'sensor' || begun === null || at < begun);
  const lineOf = (check: Check): LineView => toLine(check, entries, before(check.key));
  const places = walk.places.map((place, index): PlaceView => {
    const { name, system, cleanness, checks } = place;
    const stands = pack.stands[system?.key ?? '-'] ?? NOTHING_STANDS;
    return { number: index + 1, name, system, cleanness, stands, lines: checks.map(lineOf) };
  });
  const here = walk.signedAt === null ? null : { at: walk.signedAt, by: pack.account.name };
  // What was signed here when it had been signed by another is the second signature.
  const [signed, second] = walk.signed && !walk.signed.isOwn ? [walk.signed, here] : [walk.signed ?? here, null];
  const last = walk.items.findLast(({ kind }) => kind === 'entry');
  const was = places.find(
    ({ lines }) => last?.kind === 'entry' && lines.some(({ check }) => check.key === last.line.key),
  );
  return {
    site: pack.site,
    round: {
      id: walk.named.round,
      name: walk.name,
      isBesides: walk.timetable === null,
      dueAt: walk.timetable?.due ?? walk.begun?.at ?? pack.at,
      begun: walk.begun ?? { at: walk.items[0]?.madeAt ?? pack.at, by: pack.account.name },
      signed,
      second,
      byTwo: walk.signing?.byTwo ?? null,
      secondLook: null,
      looksTaken: [],
    },
    places,
    systems: pack.systems ?? places.flatMap(({ system }) => system ?? []),
    nextCall: newId(),
    alike: [],
    unmoved: [],
    quick: null,
    wasAt: was ? { name: was.name, cleanness: was.cleanness } : null,
    self: pack.account.name,
    isSigner: signed !== null && (walk.signed ? walk.signed.isOwn : true),
    mayWalk: true,
    mayLook: false,
  };
}

type Told = EntryView & { check: string };

/** What is known to be there, and what was made here besides, in order of when it was made. */
function entriesOf({ entries, items }: OpenWalk, pack: WalkPack): Told[] {
  const there = new Set(entries.map(({ id }) => id));
  const here = items.flatMap((item): Told[] =>
    item.kind === 'entry' && item.state !== 'refused' && !there.has(item.id) ? [local(item, pack.account.name)] : [],
  );
  return [...entries.map(arrived), ...here].sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
}

function arrived(entry: PackedEntry): Told {
  return { ...entry, photos: [], clockOffS: null };
}

function local({ id, madeAt, line, typed, value }: Extract<Item, { kind: 'entry' }>, by: string): Told {
  const said = (name: string) => (typeof typed[name] === 'string' ? typed[name] : null);
  const words = {
    notDone: said('notDone'),
    note: said('note'),
    supersedes: said('supersedes'),
    reason: said('reason'),
  };
  return { id, check: line.key, at: madeAt, by, value, ...words, photos: [], clockOffS: null };
}

function toLine(check: Check, all: readonly Told[], before: LineView['before']): LineView {
  const entries = all.filter((entry) => entry.check === check.key);
  const value = entries.at(-1)?.value;
  const stands = entries.at(-1);
  const noted = [...(stands ? [stands] : []), ...before.filter(({ from }) => from === 'round')];
  const rate = usedRate(
    check,
    noted.flatMap((one) => (one.value ? [{ value: one.value, atMs: Date.parse(one.at) }] : [])),
  );
  const isOther = value ? isAbnormal(check, value, rate) : false;
  return {
    check,
    entries,
    last: before[0] ?? null,
    before,
    isAbnormal: isOther,
    rate,
    nextEntry: newId(),
    nextPhoto: newId(),
  };
}

/** What is not sent yet of somebody at a site. */
export function countUnsent({ items, photos }: Pick<Kept, 'items' | 'photos'>): { entries: number; photos: number } {
  return { entries: waiting(items).length, photos: photos.filter(({ state }) => state === 'waiting').length };
}

/** The newest number known of a line: what was entered here, or what was seen before. */
export function lastNumber({ last }: Pick<LineView, 'last'>): number | null {
  return last?.value.kind === 'number' ? last.value.value : null;
}
