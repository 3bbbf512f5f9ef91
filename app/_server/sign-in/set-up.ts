import 'server-only';
import { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { isSetUp, makeAccount } from '#data/accounts/accounts';
import { findLink, useLink } from '#data/accounts/links';
import { inTransaction } from '#data/transaction';
import { linkToken, setUpRequest } from '#shape/accounts/sign-in';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Visit } from '../gate/visit';
import { type Entered, enter } from './enter';
import { chosenPassword } from './chosen-password';

export const setUpShape = setUpRequest;
export const setUpLinkShape = z.object({ token: linkToken });

/** Whether Holdfast may be set up by this link. */
export async function findSetUpLink(
  _visit: Visit,
  { token }: z.output<typeof setUpLinkShape>,
): Promise<Result<true, Refusal>> {
  if ((await isSetUp()) || !(await findLink('set-up', token, now())))
    return refused({ why: 'not-found', what: 'link' });
  return ok(true);
}

/** Makes the first account, which may do everything everywhere, and signs it in. */
export async function setUp(
  visit: Visit,
  { token, name, email, password }: z.output<typeof setUpShape>,
): Promise<Result<Entered, Refusal>> {
  const there = await findSetUpLink(visit, { token });
  if (!there.ok) return there;
  const chosen = await chosenPassword(password, [name, email]);
  if (!chosen.ok) return chosen;
  const passwordHash = chosen.value;
  const at = now();
  const made = await inTransaction(async (tx) => {
    if (!(await useLink(tx, { purpose: 'set-up', token }, at)) || (await isSetUp(tx))) return null;
    return await makeAccount(tx, { email, name, passwordHash, everywhere: 'admin' }, null, at);
  });
  if (made === null) return refused({ why: 'not-found', what: 'link' });
  return ok(await enter(visit, { accountId: made, way: 'password' }));
}
