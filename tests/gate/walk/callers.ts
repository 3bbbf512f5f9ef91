import { ROLES, type Role } from '#core/rota/rota';
import { endAccount } from '#data/accounts/accounts';
import { endSessions, SESSION_MS } from '#data/accounts/sessions';
import { inTransaction } from '#data/transaction';
import { now } from '#server/clock';
import { anAccount, headersOf, headersWith } from '../../_support/signed-in';

/** Somebody who asks, with what their browser sends. */
export interface Caller {
  /** Who they are, for whoever reads a complaint. */
  name: string;
  headers: Headers;
  /** Their role at the site that is asked about, or at every one. */
  role?: Role;
  /** Whether they have it at every site. */
  everywhere?: boolean;
  /** Why they are nobody here: not known at all, or somebody of another site. */
  is?: 'unknown' | 'stranger';
  /** The request calls us by a name that is not ours; the proxy turns it away before anything that is open to all. */
  isMisnamed?: true;
}

/** Gives an account a role at a site. */
export type Join = (account: string, role: Role) => Promise<void>;

/**
 * Everybody who may ask: each role at the site and at every site, nobody at all, those who were somebody until a moment ago,
 * and the administrator of another site.
 *
 * @param join        gives a role at the site that is asked about
 * @param joinOther   gives one at the other site
 */
export async function allCallers(join: Join, joinOther: Join): Promise<Caller[]> {
  const at = now();
  const here = async (role: Role) => {
    const id = await anAccount({ name: `${role} here` });
    await join(id, role);
    return id;
  };
  const callers: Caller[] = [];
  for (const role of ROLES) {
    const everywhere = await anAccount({ name: `${role} everywhere`, everywhere: role });
    callers.push({ name: role, role, headers: await headersOf(await here(role)) });
    callers.push({ name: `${role} everywhere`, role, everywhere: true, headers: await headersOf(everywhere) });
  }
  const unknown = (name: string, headers: Headers): void => void callers.push({ name, is: 'unknown', headers });
  unknown('nobody', new Headers({ host: 'localhost:3200' }));
  unknown('a token that nobody has', headersWith('x'.repeat(43)));
  unknown('an expired session', await headersOf(await here('admin'), new Date(at.getTime() - SESSION_MS)));
  const out = await here('admin');
  unknown('an ended session', await headersOf(out));
  await inTransaction((tx) => endSessions(tx, { accountId: out, by: out }, at));
  const gone = await here('admin');
  unknown('an ended account', await headersOf(gone));
  await inTransaction((tx) => endAccount(tx, gone, 'local', at));
  const named = await headersOf(await here('admin'));
  named.set('host', 'evil.example');
  callers.push({
    name: 'an administrator by a name that is not ours',
    is: 'unknown',
    isMisnamed: true,
    headers: named,
  });
  const stranger = await anAccount({ name: 'admin elsewhere' });
  await joinOther(stranger, 'admin');
  callers.push({ name: 'an administrator of another site', is: 'stranger', headers: await headersOf(stranger) });
  return callers;
}
