import 'server-only';
import { ok, type Result } from '#core/result';
import { endSessionOf } from '#data/accounts/sessions';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import { sessionCookieName, type Visit } from '../gate/visit';
import type { SetCookie } from './set-cookie';

/** Ends the session of a browser, if it has one. @returns what takes its cookie away */
export async function signOut(visit: Visit): Promise<Result<SetCookie, Refusal>> {
  if (visit.token !== null) await endSessionOf(visit.token, now());
  const { isSecure } = visit.origin;
  const name = sessionCookieName({ isSecure });
  return ok({ name, value: '', path: '/', expires: new Date(0), httpOnly: true, secure: isSecure, sameSite: 'lax' });
}
