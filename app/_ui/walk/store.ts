import type { Table } from 'dexie';
import Dexie from 'dexie';
import type { Check } from '#core/rounds/check';
import type { EntryValue } from '#core/rounds/entry';
import type { Draft } from '../form/half-typed';
import type { Outgoing } from '#core/rounds/outbox';
import type { PackedWalk, WalkPack } from '#core/rounds/pack';

/** Whose it is, and of which site: asked with every question, so that nobody is shown what is another's. */
export interface Whose {
  account: string;
  site: string;
}

/** A walk as it is named when it is sent. */
export interface WalkName {
  round: string;
  slot: string;
  due: string | null;
  name: string;
}

/** A call for help: which system, in a few words what, and what more is to be said. */
interface Help {
  system: string;
  what: string;
  saw?: string | undefined;
  where?: string | undefined;
}

/** What was made out of reach, as it waits to be sent. */
export type Item = Outgoing &
  Whose & { madeAt: string; walk: WalkName } & (
    | { kind: 'entry'; line: Check; typed: Record<string, unknown>; value: EntryValue | null }
    | { kind: 'sign'; note: string | undefined }
    | ({ kind: 'call' } & Help)
  );

/** A photo that waits. `entry` is the id of what it belongs to. */
export interface Photo extends Whose {
  id: string;
  entry: string;
  takenAt: string;
  state: 'waiting' | 'refused';
  said: string | null;
  blob: Blob;
}

/** A walk besides the timetable, which is known to this telephone alone until it is sent. */
export interface BesidesWalk extends Whose, Pick<PackedWalk, 'places'> {
  round: string;
  slot: string;
  name: string;
  begunAt: string;
}

/** What is half-typed on a line of a walk, or in the correction of an entry. */
interface KeptDraft extends Whose, Draft {
  walk: string;
  /** Key of the line, and the entry that is corrected. */
  line: string;
  atMs: number;
}

/** An item before it is counted. */
type NewItem = Item extends infer I ? (I extends Item ? Omit<I, 'seq'> : never) : never;

/** What a telephone keeps to walk rounds out of reach. */
class WalkStore extends Dexie {
  declare packs: Table<Whose & { pack: WalkPack }, [string, string]>;
  declare items: Table<Item, number, NewItem>;
  declare photos: Table<Photo, string>;
  declare walks: Table<BesidesWalk, string>;
  declare drafts: Table<KeptDraft, [string, string, string, string]>;

  constructor() {
    super('holdfast-walk');
    this.version(1).stores({
      packs: '[account+site], account',
      items: '++seq, &id, [account+site]',
      photos: 'id, [account+site]',
      walks: 'round, [account+site]',
    });
    this.version(2).stores({ drafts: '[account+site+walk+line], [account+site+walk], atMs' });
  }
}

let opened: WalkStore | undefined;

/** The one store of this browser. */
export function store(): WalkStore {
  opened ??= new WalkStore();
  return opened;
}

const of = ({ account, site }: Whose): [string, string] => [account, site];

/** What there is of somebody at a site. */
export async function readAll(whose: Whose) {
  const { packs, items, photos, walks } = store();
  const [kept, own, taken, besides] = await Promise.all([
    packs.get(of(whose)),
    items.where('[account+site]').equals(of(whose)).toArray(),
    photos.where('[account+site]').equals(of(whose)).toArray(),
    walks.where('[account+site]').equals(of(whose)).toArray(),
  ]);
  return { pack: kept?.pack ?? null, items: own, photos: taken, walks: besides };
}

/** All that is of somebody at a site. */
export type Kept = Awaited<ReturnType<typeof readAll>>;

/** ms for which what has arrived is still shown from here. */
const SHOWN_MS = 2 * 86_400_000;

/**
 * Keeps what was fetched for somebody. What others had fetched with this browser goes, what they have not sent stays; what has
 * arrived long ago goes too.
 */
export async function keepPack(pack: WalkPack, nowMs: number): Promise<void> {
  const { packs, items, drafts } = store();
  const whose = { account: pack.account.id, site: pack.site.key };
  await packs.put({ ...whose, pack });
  await packs.where('account').notEqual(pack.account.id).delete();
  await items
    .where('[account+site]')
    .equals(of(whose))
    .filter(({ state, madeAt }) => state === 'kept' && nowMs - Date.parse(madeAt) > SHOWN_MS)
    .delete();
  await drafts
    .where('atMs')
    .below(nowMs - SHOWN_MS)
    .delete();
}

/** Things that wait for somebody else to sign in again: how many, and nothing of what they are. */
export async function countOthers(account: string | null): Promise<number> {
  return await store()
    .items.filter((item) => item.account !== account && item.state === 'waiting')
    .count();
}

/** The sites whose rounds are kept here for somebody. */
export async function keptSites(account: string | null): Promise<{ key: string; name: string }[]> {
  if (account === null) return [];
  const packs = await store().packs.where('account').equals(account).toArray();
  return packs.map(({ pack: { site } }) => ({ key: site.key, name: site.name }));
}
