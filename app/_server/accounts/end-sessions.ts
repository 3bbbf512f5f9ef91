import 'server-only';
import { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { endSession, endSessions } from '#data/accounts/sessions';
import { inTransaction } from '#data/transaction';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';

export const endOwnSessionShape = z.object({ id: z.uuid() });
/** Nothing has to be said to end the others. */
export const endOtherSessionsShape = z.object({});

/** Ends a session of one's own: that browser is signed out at its next request. */
export async function endOwnSession(
  who: Who,
  { id }: z.output<typeof endOwnSessionShape>,
): Promise<Result<true, Refusal>> {
  return (await endSession(who.id, id, who.id, now())) ? ok(true) : refused({ why: 'not-found', what: 'session' });
}

/** Ends every session of one's own but the one this is asked in. @returns how many */
export async function endOtherSessions(who: Who): Promise<Result<number, Refusal>> {
  const { id, session: except = null } = who;
  return ok(await inTransaction((tx) => endSessions(tx, { accountId: id, by: id, except }, now())));
}
