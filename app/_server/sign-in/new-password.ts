import 'server-only';
import { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { setPassword } from '#data/accounts/accounts';
import { findLink, useLink } from '#data/accounts/links';
import { forgetFailures } from '#data/accounts/tries';
import { inTransaction } from '#data/transaction';
import { linkToken, newPasswordRequest } from '#shape/accounts/sign-in';
import { now } from '../clock';
import type { OpenCase } from '../gate/open';
import type { Refusal } from '../gate/refusal';
import { chosenPassword } from './chosen-password';
import { type Entered, enter } from './enter';

export const newPasswordShape = newPasswordRequest;
export const personLinkShape = z.object({ token: linkToken });

/** Whom a link is for. */
export interface LinkPerson {
  name: string | null;
  email: string | null;
}

const GONE: Refusal = { why: 'not-found', what: 'link' };

/** Makes the question whom a link of this purpose is for, if it may be used. */
export function findPersonLink(purpose: 'join' | 'reset'): OpenCase<z.output<typeof personLinkShape>, LinkPerson> {
  return async (_visit, { token }) => {
    const link = await findLink(purpose, token, now());
    return link ? ok({ name: link.name, email: link.email }) : refused(GONE);
  };
}

/**
 * Makes the use case that gives an account a new password by a link of this purpose, and signs it in. Every session it had
 * ends, and its failures are forgotten.
 */
export function choosePassword(purpose: 'join' | 'reset'): OpenCase<z.output<typeof newPasswordShape>, Entered> {
  return async (visit, { token, password }): Promise<Result<Entered, Refusal>> => {
    const link = await findLink(purpose, token, now());
    if (!link) return refused(GONE);
    const chosen = await chosenPassword(password, [link.name, link.email]);
    if (!chosen.ok) return chosen;
    const passwordHash = chosen.value;
    const at = now();
    const accountId = await inTransaction(async (tx) => {
      const used = await useLink(tx, { purpose, token }, at);
      if (!used || used.accountId === null) return null;
      await setPassword(tx, { accountId: used.accountId, passwordHash, by: used.accountId }, at);
      return used.accountId;
    });
    if (accountId === null) return refused(GONE);
    if (link.email !== null) await forgetFailures(link.email);
    return ok(await enter(visit, { accountId, way: 'password' }));
  };
}
