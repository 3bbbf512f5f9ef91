import type { Copy } from './database';

const ID = '019a0000-0000-7000-8000-00000000000';

/** Everything that is awkward in a line of text. */
const AWKWARD = 'tab\t, new\nline, \r, back\\slash, \\., \\N, "quoted", ‘’, 🐟, {a,b}';

/**
 * Rows in the tables that no site fills, with values that are awkward to write as text, and in those no backup holds.
 */
export async function fillAccounts(query: Copy['query']): Promise<void> {
  await query(
    `INSERT INTO account (id, email, name, password_hash, everywhere, created_at)
     VALUES ('${ID}1', 'a@example.test', $1, '', 'admin', now()), ('${ID}2', NULL, NULL, NULL, NULL, '0001-01-01')`,
    [AWKWARD],
  );
  await query(
    `INSERT INTO passkey (id, account_id, public_key, counter, transports, name, created_at)
     VALUES ($1, '${ID}1', $2, 9223372036854775807, $3, '\\.', now())`,
    [AWKWARD, Buffer.from(Array.from({ length: 256 }, (_, at) => at)), [AWKWARD, '', 'NULL', null]],
  );
  await query(`INSERT INTO outside_identity VALUES ('https://issuer.example', '\\.', '${ID}1', now())`);
  await query(
    `INSERT INTO account_event (id, at, kind, account_id, "by", detail) VALUES ('${ID}3', now(), '\\.', NULL, NULL, $1)`,
    [JSON.stringify({ said: AWKWARD, figures: [1e-300, 0.1, 12345678901234567890n.toString()], none: null })],
  );
  await query(
    `INSERT INTO session VALUES ('${ID}4', decode(repeat('ab', 32), 'hex'), '${ID}1', now(), now(), now(), NULL, 'password', '')`,
  );
}
