import 'server-only';
import type { Bodies, Entry, EntryKind } from '#core/incidents/incident';
import { ok, refused, type Result } from '#core/result';
import { isEntryElsewhere } from '#data/incidents/entries';
import { bodyShapes } from '#shape/incidents/bodies';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import type { Held } from './change-incident';
import { momentOf } from './local-time';

/** What every entry is sent with. */
export interface Sent<K extends EntryKind> {
  entry: string;
  kind: K;
  at?: string;
  supersedes?: string;
  reason?: string;
  body: Bodies[K];
}

/**
 * Makes the entry that somebody sent. What is sent twice is there once.
 *
 * @returns   null when it is there already
 */
export async function entryFrom<K extends EntryKind>(
  who: Who,
  held: Held,
  { entry: id, kind, at, supersedes, reason, body }: Sent<K>,
): Promise<Result<Entry | null, Refusal>> {
  if (held.entries.some((one) => one.id === id)) return ok(null);
  if (await isEntryElsewhere(held.tx, held.site.id, id))
    return refused({ why: 'conflict', now: 'This was sent for another incident already.' });
  const moment = momentOf(held.site.zone, at, 'at', held.at);
  if (!moment.ok) return moment;
  const corrected = correctionOf(held.entries, kind, supersedes, reason);
  if (!corrected.ok) return corrected;
  return ok({
    id,
    kind,
    atMs: at === undefined && corrected.value ? corrected.value.atMs : moment.value,
    recordedMs: held.at.getTime(),
    by: who.id,
    body: bodyShapes[kind].parse(body),
    supersedes: corrected.value?.id ?? null,
    reason: corrected.value ? (reason ?? null) : null,
  } as Entry);
}

/** The entry that is corrected: one of this incident, of the same kind, not corrected yet, and with a reason. */
export function correctionOf(
  entries: readonly Entry[],
  kind: EntryKind | null,
  supersedes: string | undefined,
  reason: string | undefined,
): Result<Entry | null, Refusal> {
  if (supersedes === undefined) return ok(null);
  const found = entries.find(({ id }) => id === supersedes);
  if (!found || (kind !== null && found.kind !== kind)) return refused({ why: 'not-found', what: 'entry' });
  if (reason === undefined)
    return refused({ why: 'invalid', faults: [{ path: 'reason', message: 'must say why it is corrected' }] });
  if (found.body === null || entries.some((one) => one.supersedes === supersedes))
    return refused({ why: 'conflict', now: 'Somebody has corrected this entry meanwhile: look at what it says now.' });
  return ok(found);
}
