import { z } from 'zod';
import { callForHelpRequest } from '../alarms/by-hand';
import { enterRequest } from './requests';
import { checkShape } from './sheet';

/** Things that are taken in at once. */
const MOST_ITEMS = 40;

/** A walk as a telephone names it: by the timetable, which two may have begun at once, or by an id that it made itself. */
const walk = z.object({
  round: z.uuid(),
  slot: z.string().max(200),
  /** When it was due; null for one besides the timetable. */
  due: z.iso.datetime().nullable(),
  name: z.string().trim().min(1).max(200),
});

/** When something was made, by the clock of the telephone. */
const made = { id: z.uuid(), madeAt: z.iso.datetime(), walk };

const entry = z.object({
  ...made,
  kind: z.literal('entry'),
  /** The line as it stood before whoever looked. */
  line: checkShape,
  /** What was typed, as a form has it; whose round and which line it is stand beside it. */
  typed: z.record(z.string().max(60), z.unknown()),
});

/** Somebody saw what no sensor reads and calls for help; its id is that of the call. */
const call = z.object({
  ...made,
  kind: z.literal('call'),
  ...callForHelpRequest.pick({ system: true, what: true, saw: true, where: true }).shape,
});

const sign = z.object({ ...made, kind: z.literal('sign'), note: z.string().trim().max(2000).optional() });

/** What a telephone sends once it has a signal: the oldest first. */
export const syncRequest = z.object({
  site: z.string(),
  /** Whose entries they are: nobody sends those of another. */
  account: z.string().max(80),
  /** What the clock of the telephone says now. */
  sentAt: z.iso.datetime(),
  items: z.array(z.discriminatedUnion('kind', [entry, sign, call])).max(MOST_ITEMS),
});

export type SyncRequest = z.output<typeof syncRequest>;
export type SentItem = SyncRequest['items'][number];
export type SentEntry = Extract<SentItem, { kind: 'entry' }>;
export type SentWalk = z.output<typeof walk>;

/** Reads what was typed on a line that a telephone sends. */
export function typedOn(item: SentEntry, site: string) {
  return enterRequest.safeParse({ ...item.typed, site, round: item.walk.round, check: item.line.key, entry: item.id });
}

/** A photo that is sent, and the entry it belongs to. */
export const photoRequest = z.object({
  site: z.string(),
  photo: z.uuid(),
  entry: z.uuid(),
  takenAt: z.iso.datetime(),
  body: z.instanceof(Uint8Array),
});

/** A photo that a form adds to an entry, or that is the entry itself where a photo is what is asked for. */
export const photoForm = z.object({
  site: z.string(),
  round: z.uuid(),
  check: z.string().max(300),
  photo: z.uuid(),
  entry: z.uuid(),
  /** Whether the entry is made with it. */
  first: z.literal('yes').optional(),
  picture: z.object({ name: z.string(), bytes: z.instanceof(Uint8Array) }, { error: 'choose a photo' }),
});

export type PhotoForm = z.output<typeof photoForm>;

export const photoAddress = z.object({ site: z.string(), photo: z.uuid() });

export type PhotoRequest = z.output<typeof photoRequest>;
export type PhotoAddress = z.output<typeof photoAddress>;
