import 'server-only';
import { ok, type Result, refused } from '#core/result';
import { accountNames } from '#data/accounts/names';
import { news } from '#data/news';
import { appendRecords } from '#data/records/append-records';
import { findSignature, giveSignature } from '#data/states/signatures';
import { inTransaction } from '#data/transaction';
import { type SecondRequest, secondRequest } from '#shape/states/second-request';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';

export const signSecondShape = secondRequest;

/** Gives the second signature: somebody else looked, and says whether it is as it should be. What one sends twice is given once. */
export async function signSecond(who: Who, request: SecondRequest): Promise<Result<{ site: string }, Refusal>> {
  const { site, asked, isRight, note } = request;
  const allowed = await siteFor(who, 'walk', site);
  if (!allowed.ok) return allowed;
  const siteId = allowed.value.id;
  const at = now();
  return await inTransaction(async (tx): Promise<Result<{ site: string }, Refusal>> => {
    await tx.$queryRaw`SELECT 1 FROM site WHERE id = ${siteId}::uuid FOR NO KEY UPDATE`;
    const found = await findSignature(tx, siteId, asked);
    if (!found) return refused({ why: 'not-found', what: 'signature' });
    if (found.by === who.id)
      return refused({ why: 'conflict', now: 'You did this yourself: the second signature is that of somebody else.' });
    if (found.given?.by === who.id) return ok({ site });
    if (found.given) {
      const name = (await accountNames([found.given.by])).get(found.given.by) ?? 'Somebody else';
      return refused({ why: 'conflict', now: `${name} has signed it already.` });
    }
    await giveSignature(tx, siteId, asked, { at, by: who.id, isRight, note });
    const { kind: what, about, systemId } = found;
    const body = { by: who.id, what, asked, about, isRight, note, ...(systemId && { system: systemId }) };
    await appendRecords(tx, siteId, [{ kind: isRight ? 'second-given' : 'second-objected', body }], at);
    await news(tx, siteId, 'states');
    return ok({ site });
  });
}
