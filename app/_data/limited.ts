import 'server-only';
import pg from 'pg';
import { connectionSettings } from './connection';

/** The role whose rights the processes have; `prisma/prepare` makes it. */
const ROLE = 'holdfast_app';

/** Whether the session may take on the role, and the role may write in this very database. */
const MAY_TAKE_ON = `
  SELECT pg_has_role(session_user, r.oid, 'MEMBER') AND has_table_privilege(r.oid, t.oid, 'INSERT') AS may
    FROM pg_roles r, pg_class t WHERE r.rolname = $1 AND t.oid = to_regclass('public.record')`;

/**
 * The same database with the rights of the processes where the account may have more: whoever runs a command by hand
 * may be the owner of the tables, and a command shall not break the record either.
 *
 * @param url   address of the database
 * @returns     the address with the role in its options, or as it was where there is no such role
 * @throws      when the database does not answer
 */
export async function limitedAddress(url: string): Promise<string> {
  const client = new pg.Client(connectionSettings(url));
  await client.connect();
  try {
    const { rows } = await client.query<{ may: boolean }>(MAY_TAKE_ON, [ROLE]);
    if (rows[0]?.may !== true) return url;
  } finally {
    await client.end();
  }
  const address = new URL(url);
  const asked = address.searchParams.get('options');
  address.searchParams.set('options', `${asked ? `${asked} ` : ''}-c role=${ROLE}`);
  return address.href;
}
