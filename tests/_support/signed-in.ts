import { inTransaction } from '#data/transaction';
import { makeAccount, type NewAccount } from '#data/accounts/accounts';
import { beginSession } from '#data/accounts/sessions';
import { now } from '#server/clock';

let count = 0;

/** Makes an account of the test file's database; what is left out is as good as any other. @returns its id */
export async function anAccount(given: Partial<NewAccount> = {}): Promise<string> {
  count += 1;
  const account = { email: `person-${count}@holdfast.example`, name: `Person ${count}`, ...given };
  const id = await inTransaction((tx) => makeAccount(tx, account, 'local', now()));
  if (id === null) throw new Error(`${account.email} has an account already`);
  return id;
}

/** Signs an account in. @returns headers of a request of their browser to this machine */
export async function headersOf(accountId: string, at = now()): Promise<Headers> {
  const begun = { accountId, way: 'password', browser: 'a test', former: null } as const;
  const token = await beginSession(begun, at);
  if (token === null) throw new Error('The account has ended');
  return headersWith(token);
}

/** Headers of a request to this machine with the token of a session. */
export function headersWith(token: string): Headers {
  return new Headers({ host: 'localhost:3200', cookie: `holdfast-units=us; holdfast-session=${token}` });
}
