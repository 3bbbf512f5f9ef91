import type { Check } from '#core/rounds/check';
import type { EntryValue } from '#core/rounds/entry';
import { readLine } from '#core/rounds/read/line';
import { type FormAnswer, givenUp } from '../form/answer';
import { clock, newId } from './device';
import type { CalledView } from '../rounds/call-help';
import type { LineView, PlaceView } from '../rounds/round-view';
import { blankOf } from '../rounds/round-view';
import { type BesidesWalk, type Photo, store, type WalkName, type Whose } from './store';
import { draftKey } from './drafts';
import { lastNumber, walkKey } from './view';

/** Where something is made: whose it is, and on which walk. */
export interface On extends Whose {
  walk: WalkName;
}

const FIGURE = 'figure.';
/** Fields that say where an entry belongs, which stands beside what was typed. */
const ADDRESS = ['site', 'round', 'check', 'entry', 'place'];

/** What was typed into a form, without what was left empty. */
function typedIn(form: FormData): Record<string, unknown> {
  const typed: Record<string, unknown> = {};
  const figures: Record<string, string> = {};
  for (const [name, given] of form) {
    const text = typeof given === 'string' ? given.replaceAll('\0', '').trim() : '';
    if (text === '' || ADDRESS.includes(name)) continue;
    if (name.startsWith(FIGURE)) figures[name.slice(FIGURE.length)] = text;
    else typed[name] = text;
  }
  return { units: 'metric', ...typed, figures };
}

/** Makes an entry of what was typed, and keeps it on this telephone; or asks first, as the page that is online does. */
export async function makeEntry(on: On, line: LineView, form: FormData): Promise<FormAnswer<{ asked: string | null }>> {
  const typed = typedIn(form);
  const entry = String(form.get('entry') ?? newId());
  const said = { ...typed, entry } as unknown as Parameters<typeof readLine>[1];
  const read = readLine(line.check, said, lastNumber(line));
  if (!read.ok) return { ok: false, said: '', faults: [], reason: { why: 'invalid', faults: read.reason } };
  const { value, question } = read.value;
  if (question !== null && typed.sure === undefined) return { ok: true, value: { asked: question } };
  return await keeping(async () => {
    await addEntry(on, line.check, { id: entry, typed, value });
    return { asked: null };
  });
}

/** Makes an entry of each line of a place that is still blank: as usual, where looking is all there is to it; or not done. */
export async function makeRest(on: On, place: PlaceView, form: FormData): Promise<FormAnswer<null>> {
  const notDone = typedIn(form).notDone;
  return await keeping(async () => {
    for (const { check } of blankOf(place)) {
      const isLook = check.kind === 'yes-no' || check.kind === 'head-count';
      if (typeof notDone === 'string') await addEntry(on, check, { id: newId(), typed: { notDone }, value: null });
      else if (isLook) await addEntry(on, check, { id: newId(), typed: { seen: 'usual' }, value: usual(check.kind) });
    }
    return null;
  });
}

function usual(kind: 'yes-no' | 'head-count'): EntryValue {
  return kind === 'yes-no' ? { kind, asUsual: true } : { kind, count: null };
}

async function addEntry(
  { account, site, walk }: On,
  line: Check,
  { id, typed, value }: { id: string; typed: Record<string, unknown>; value: EntryValue | null },
): Promise<void> {
  const made = {
    id,
    account,
    site,
    walk,
    madeAt: new Date(clock()).toISOString(),
    state: 'waiting',
    said: null,
  } as const;
  const { items, drafts } = store();
  const { supersedes } = typed;
  await store().transaction('rw', items, drafts, async () => {
    await items.add({ ...made, kind: 'entry', line, typed, value });
    await drafts.delete([account, site, walkKey(walk), draftKey(line.key, supersedes)]);
  });
}

/** Signs a walk on this telephone. */
export async function makeSignature({ account, site, walk }: On, form: FormData): Promise<FormAnswer<null>> {
  const note = typedIn(form).note;
  return await keeping(async () => {
    const made = {
      id: newId(),
      account,
      site,
      walk,
      madeAt: new Date(clock()).toISOString(),
      state: 'waiting',
      said: null,
    } as const;
    await store().items.add({ ...made, kind: 'sign', note: typeof note === 'string' ? note : undefined });
    return null;
  });
}

/** Calls for help from this telephone: once there is a signal. */
export async function makeCall({ account, site, walk }: On, form: FormData): Promise<FormAnswer<CalledView>> {
  const { system, what, saw, where } = typedIn(form);
  const said = (given: unknown) => (typeof given === 'string' ? given : undefined);
  if (!(typeof system === 'string' && typeof what === 'string'))
    return givenUp('invalid', 'Say in a few words what is wrong, and of which system.');
  return await keeping(async () => {
    const made = {
      id: String(form.get('call') ?? newId()),
      account,
      site,
      walk,
      madeAt: new Date(clock()).toISOString(),
      state: 'waiting',
      said: null,
      isUrgent: true,
    } as const;
    await store().items.add({ ...made, kind: 'call', system, what, saw: said(saw), where: said(where) });
    return { told: null };
  });
}

/** Begins a walk besides the timetable. @returns its id */
export async function makeBesides(
  whose: Whose,
  { slot, name, places }: Pick<BesidesWalk, 'slot' | 'name' | 'places'>,
): Promise<FormAnswer<string>> {
  return await keeping(async () => {
    const round = newId();
    await store().walks.add({ ...whose, round, slot, name, places, begunAt: new Date(clock()).toISOString() });
    return round;
  });
}

/** Keeps a photo of an entry. */
export async function makePhoto({ account, site }: Whose, entry: string, blob: Blob): Promise<FormAnswer<string>> {
  return await keeping(async () => {
    const id = newId();
    const photo: Photo = {
      id,
      entry,
      account,
      site,
      blob,
      takenAt: new Date(clock()).toISOString(),
      state: 'waiting',
      said: null,
    };
    await store().photos.add(photo);
    return id;
  });
}

/** Does what has to be kept here; that it could not be is said, and what was typed stays in its fields. */
async function keeping<T>(work: () => Promise<T>): Promise<FormAnswer<T>> {
  try {
    return { ok: true, value: await work() };
  } catch (error) {
    return givenUp('not-kept', isFull(error) ? NO_ROOM : NOT_KEPT);
  }
}

const NO_ROOM =
  'This telephone has no room left for it. What you typed is still here, and nothing that was entered before is lost: free some space and save it again, or write it down.';
const NOT_KEPT = 'This browser did not keep it. What you typed is still here: save it again, or write it down.';

function isFull(error: unknown): boolean {
  if (!(error instanceof Error)) return false;
  const inner = 'inner' in error && error.inner instanceof Error ? error.inner.name : '';
  return [error.name, inner].some((name) => name === 'QuotaExceededError');
}
