import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { waysOf } from '#data/calls/ways';
import { addKeyHanded } from '#data/keys/keys';
import { appendRecords } from '#data/records/append-records';
import { inTransaction } from '#data/transaction';
import { handKeyRequest } from '#shape/keys/requests';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';

export const handKeyShape = handKeyRequest;

/** Says who has a key from now on, or where it lies. What was said before stays. */
export async function handKey(
  who: Who,
  { site: key, key: name, holder, place }: z.output<typeof handKeyShape>,
): Promise<Result<{ site: string }, Refusal>> {
  const found = await siteFor(who, 'hand-over', key);
  if (!found.ok) return found;
  const siteId = found.value.id;
  if (holder !== undefined && !(await waysOf(siteId)).some(({ account }) => account === holder))
    return refused({ why: 'not-found', what: 'person' });
  const at = now();
  const where = holder === undefined ? { holderId: null, place } : { holderId: holder, place: null };
  await inTransaction(async (tx) => {
    await addKeyHanded(tx, siteId, { key: name, ...where, at, by: who.id });
    const body = { by: who.id, key: name, ...(holder === undefined ? { place } : { holder }) };
    await appendRecords(tx, siteId, [{ kind: 'key-handed', body }], at);
  });
  return ok({ site: key });
}
