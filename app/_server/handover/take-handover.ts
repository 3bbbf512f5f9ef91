import 'server-only';
import { ok, type Result, refused } from '#core/result';
import { emailKey, findAccountByEmail, findPasswordHash, noteFailure } from '#data/accounts/accounts';
import { listMembers } from '#data/accounts/members';
import { countTry, forgetFailures } from '#data/accounts/tries';
import { findHandover, takeHandover as keepTaken } from '#data/handover/handovers';
import { news } from '#data/news';
import { appendRecords } from '#data/records/append-records';
import type { SiteEntry } from '#data/sites';
import { inTransaction } from '#data/transaction';
import { type TakeHereRequest, type TakeRequest, takeHereRequest, takeRequest } from '#shape/handover/requests';
import { now } from '../clock';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { isPassword } from '../sign-in/password';

export const takeHandoverShape = takeRequest;
export const takeHandoverHereShape = takeHereRequest;

type Taken = Result<{ site: string }, Refusal>;

/** Takes a site over, having read back what stands: on a session of one's own. */
export async function takeHandover(who: Who, { site, handover, note }: TakeRequest): Promise<Taken> {
  const allowed = await siteFor(who, 'hand-over', site);
  if (!allowed.ok) return allowed;
  return await keep(allowed.value, handover, { by: who.id, how: 'session', note });
}

/**
 * The same on the session of whoever gave it: whoever takes it types their own address and password, which are not kept and sign
 * nobody in. Tries are counted as at the sign-in.
 */
export async function takeHandoverHere(who: Who, request: TakeHereRequest): Promise<Taken> {
  const { site, handover, note, email, password } = request;
  const allowed = await siteFor(who, 'hand-over', site);
  if (!allowed.ok) return allowed;
  const key = emailKey(email);
  const pause = await countTry(key, who.id);
  if (pause !== null) return refused({ why: 'too-often', waitS: pause === 'never' ? null : pause.waitS });
  const account = await findAccountByEmail(key);
  const hashed = account && (await findPasswordHash(account.id));
  if (!(await isPassword(hashed, password)) || !account || account.endedAt !== null) {
    await noteFailure({ accountId: account?.id ?? null, way: 'password' }, now());
    return refused({ why: 'wrong-sign-in' });
  }
  await forgetFailures(key, who.id);
  if (!(await mayTake(allowed.value, account))) return refused({ why: 'not-allowed' });
  return await keep(allowed.value, handover, { by: account.id, how: 'password', note });
}

/** Whether an account may take a site, by its role there, else everywhere. */
async function mayTake(
  { id, key }: SiteEntry,
  account: { id: string; name: string | null; everywhere: Who['everywhere'] },
): Promise<boolean> {
  const member = (await listMembers(id)).find(({ accountId, endedAt }) => accountId === account.id && endedAt === null);
  const at = member ? { [key]: member.role } : {};
  return may({ id: account.id, name: account.name ?? '', everywhere: account.everywhere, at }, 'hand-over', key);
}

async function keep(
  { id: siteId, key: site }: SiteEntry,
  handover: string,
  { by, how, note = '' }: { by: string; how: 'session' | 'password'; note?: string },
): Promise<Taken> {
  const at = now();
  return await inTransaction(async (tx): Promise<Taken> => {
    await tx.$queryRaw`SELECT 1 FROM site WHERE id = ${siteId}::uuid FOR NO KEY UPDATE`;
    const found = await findHandover(siteId, handover, tx);
    if (!found) return refused({ why: 'not-found', what: 'handover' });
    if (found.taken?.by === by) return ok({ site });
    if (found.taken) return refused({ why: 'conflict', now: 'Somebody else has taken it already.' });
    if (found.by === by)
      return refused({
        why: 'conflict',
        now: 'Whoever hands a site over cannot take it: the other one reads it back.',
      });
    await keepTaken(tx, siteId, handover, { at, by, how, note: note || null });
    const body = { by, handover, from: found.by, how, digest: found.digest, ...(note && { note }) };
    await appendRecords(tx, siteId, [{ kind: 'handover-taken', body }], at);
    await news(tx, siteId, 'states');
    return ok({ site });
  });
}
