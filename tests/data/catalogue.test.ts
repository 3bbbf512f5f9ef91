import { describe, expect, test } from 'vitest';
import { freshDatabase } from '../_support/database';

const { query } = freshDatabase();

/** Tables that belong to no site: the register of sites, those who may sign in, and the machinery. */
const SHARED = [
  '_prisma_migrations',
  'account',
  'account_event',
  'backup_run',
  'disk_sighting',
  'notice_sent',
  'one_time_link',
  'outside_identity',
  'passkey',
  'passkey_challenge',
  'path_sighting',
  'push_device',
  'push_key',
  'rate_limit',
  'reading_retired',
  'reading_rolled',
  'session',
  'site',
  'worker_sighting',
];
/** Tables whose rows are added and nothing else. */
const ONLY_ADDED = [
  'account_event',
  'alarm_call',
  'alarm_call_try',
  'alarm_event',
  'alarm_occurrence',
  'alarm_suppression',
  'anchor_sent',
  'animal_watch',
  'animal_watch_end',
  'call_out',
  'call_out_event',
  'file_import',
  'handover',
  'handover_taken',
  'incident',
  'incident_entry',
  'key_handed',
  'plan_status',
  'plan_version',
  'reading',
  'reading_limit',
  'reading_retired',
  'record',
  'record_anchor',
  'review_kept',
  'rota_change',
  'rota_change_event',
  'round',
  'round_entry',
  'round_photo',
  'round_sheet_version',
  'round_signature',
  'safeguard_test',
  'signature_asked',
  'signature_given',
  'site_notice',
  'site_notice_end',
  'state_answered',
  'state_asked',
  'state_call',
  'state_event',
  'taken_back',
  'test_call',
  'test_call_answer',
];

const OURS = `FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace AND n.nspname = 'public'`;

async function column(sql: string): Promise<string[]> {
  const { rows } = await query(sql);
  return rows.map(({ found }) => found).sort();
}

const tables = () => column(`SELECT c.relname AS found ${OURS} WHERE c.relkind IN ('r', 'p')`);

const siteTables = () =>
  column(`SELECT c.relname AS found ${OURS}
            JOIN pg_attribute a ON a.attrelid = c.oid AND a.attname = 'site_id' WHERE c.relkind IN ('r', 'p')`);

/** Site tables whose site_id is of another type, or may be empty. */
const looseSites = () =>
  column(`SELECT c.relname AS found ${OURS}
            JOIN pg_attribute a ON a.attrelid = c.oid AND a.attname = 'site_id'
           WHERE c.relkind IN ('r', 'p') AND NOT (a.atttypid = 'uuid'::regtype AND a.attnotnull)`);

/** Primary and unique keys of site tables that do not begin with site_id, and site tables without a primary key. */
const keysElsewhere = () =>
  column(`SELECT i.indexrelid::regclass::text AS found ${OURS}
            JOIN pg_attribute s ON s.attrelid = c.oid AND s.attname = 'site_id'
            JOIN pg_index i ON i.indrelid = c.oid AND i.indisunique AND i.indkey[0] <> s.attnum
          UNION ALL
          SELECT c.relname || ' has no primary key' ${OURS}
           WHERE c.relkind IN ('r', 'p') AND NOT EXISTS (SELECT FROM pg_index i WHERE i.indrelid = c.oid AND i.indisprimary)`);

/** Foreign keys of site tables that do not begin with site_id, on either side, where the other side is a site table. */
const referencesElsewhere = () =>
  column(`SELECT k.conname AS found FROM pg_constraint k
            JOIN pg_attribute s ON s.attrelid = k.conrelid AND s.attname = 'site_id'
            LEFT JOIN pg_attribute o ON o.attrelid = k.confrelid AND o.attname = 'site_id'
           WHERE k.contype = 'f' AND (k.conkey[1] <> s.attnum
              OR (o.attnum IS NULL AND k.confrelid <> 'site'::regclass) OR (o.attnum IS NOT NULL AND k.confkey[1] <> o.attnum))`);

/** Shared tables that lean on the register of sites or on a table of a site; on one another they may. */
const sharedOnSites = () =>
  column(`SELECT k.conname AS found FROM pg_constraint k
            LEFT JOIN pg_attribute o ON o.attrelid = k.confrelid AND o.attname = 'site_id'
           WHERE k.contype = 'f' AND (k.confrelid = 'site'::regclass OR o.attnum IS NOT NULL) AND NOT EXISTS (
             SELECT FROM pg_attribute s WHERE s.attrelid = k.conrelid AND s.attname = 'site_id')`);

/** Columns that hold an instant without its zone, or a number that the database draws. */
const badColumns = () =>
  column(`SELECT c.relname || '.' || a.attname AS found ${OURS}
            JOIN pg_attribute a ON a.attrelid = c.oid AND a.attnum > 0 AND NOT a.attisdropped
            LEFT JOIN pg_attrdef d ON d.adrelid = c.oid AND d.adnum = a.attnum
           WHERE c.relkind IN ('r', 'p') AND c.relname <> '_prisma_migrations'
             AND (a.atttypid IN ('timestamp'::regtype, 'time'::regtype, 'timetz'::regtype) OR a.attidentity <> ''
                  OR pg_get_expr(d.adbin, d.adrelid) LIKE '%nextval%')`);

describe('the tables', () => {
  test('are those of a site, and the shared ones that are listed here', async () => {
    const ofSites = await siteTables();
    expect(ofSites.length).toBeGreaterThan(20);
    expect((await tables()).filter((name) => !ofSites.includes(name))).toEqual(SHARED);
  });

  test('of a site have site_id first in every primary, unique and foreign key', async () => {
    expect(await looseSites()).toEqual([]);
    expect(await keysElsewhere()).toEqual([]);
    expect(await referencesElsewhere()).toEqual([]);
    expect(await sharedOnSites()).toEqual([]);
  });

  test('hold instants with their zone, and ids that the database does not draw', async () => {
    expect(await badColumns()).toEqual([]);
  });

  test('that break a rule are seen to', async () => {
    await query(`CREATE TABLE stray (site_id uuid, id int GENERATED ALWAYS AS IDENTITY PRIMARY KEY, at timestamp, room uuid,
                   UNIQUE (room, site_id), FOREIGN KEY (id) REFERENCES stray (id))`);
    await query('CREATE TABLE loose (site text REFERENCES site (key))');
    expect(await looseSites()).toEqual(['stray']);
    expect(await keysElsewhere()).toEqual(['loose has no primary key', 'stray_pkey', 'stray_room_site_id_key']);
    expect(await referencesElsewhere()).toEqual(['stray_id_fkey']);
    expect(await sharedOnSites()).toEqual(['loose_site_fkey']);
    expect(await badColumns()).toEqual(['stray.at', 'stray.id']);
    await query('DROP TABLE stray, loose');
  });
});

describe('tables whose rows are only added', () => {
  test('are all guarded against change, removal and emptying', async () => {
    const guarded = await column(`SELECT c.relname AS found ${OURS}
      JOIN pg_trigger t ON t.tgrelid = c.oid AND NOT t.tgisinternal AND t.tgenabled = 'O' GROUP BY c.relname
     HAVING bit_or(t.tgtype) & 56 = 56`);
    expect(guarded).toEqual(ONLY_ADDED);
  });

  test.each(ONLY_ADDED)('%s refuses UPDATE, DELETE and TRUNCATE, even to its owner', async (table) => {
    const attempts = [
      `UPDATE ${table} SET ${SAME[table] ?? 'site_id = site_id'}`,
      `DELETE FROM ${table}`,
      `TRUNCATE ${table} CASCADE`,
    ];
    await fill(table);
    for (const attempt of attempts)
      await expect(query(attempt)).rejects.toThrow('are added and never changed or removed');
  });
});

/** A change that changes nothing, of tables without a site. */
const SAME: Record<string, string> = { account_event: 'id = id', reading_retired: '"month" = "month"' };
const SITE = '019a0000-0000-7000-8000-000000000001';

/** One row in a table, without what it refers to. */
async function fill(table: string): Promise<void> {
  await query(`SELECT make_reading_part('2026-11-25')`);
  const zero = `decode(repeat('00', 32), 'hex')`;
  const rows: Record<string, string> = {
    record: `'${SITE}', 1, now(), 'test', '{}', ${zero}, ${zero}`,
    account_event: `'${SITE}', now(), 'test', NULL, NULL, '{}'`,
    record_anchor: `'${SITE}', now(), 1, ${zero}, now()`,
    anchor_sent: `'${SITE}', now(), 'file', 'somewhere', now()`,
    plan_version: `'${SITE}', '${SITE}', 1, '{}', now()`,
    plan_status: `'${SITE}', '${SITE}', 1, 'in-force', now()`,
    reading: `'${SITE}', '${SITE}', '2026-11-25', 1, 0, 25.1, 0, NULL, NULL, NULL, now()`,
    reading_limit: `'${SITE}', '${SITE}', now(), 26, NULL`,
    reading_retired: `'2026-01-01', now()`,
    file_import: `'${SITE}', '${SITE}', '${SITE}', 'a.csv', ${zero}, now(), 'local', '{}'`,
    alarm_occurrence: `'${SITE}', '${SITE}', '${SITE}', '${SITE}', now(), now(), 1, '{}'`,
    alarm_event: `'${SITE}', '${SITE}', '${SITE}', 'raised', now(), NULL, NULL, NULL, '{}'`,
    alarm_suppression: `'${SITE}', '${SITE}', '${SITE}', '${SITE}', 'shelved', 'ended', now(), NULL, 'local', NULL, NULL, '{}'`,
    alarm_call: `'${SITE}', '${SITE}', '${SITE}', 1, '${SITE}', 'mail', 'on-site', now()`,
    alarm_call_try: `'${SITE}', '${SITE}', '${SITE}', now(), 'taken', NULL`,
    state_event: `'${SITE}', '${SITE}', '${SITE}', '${SITE}', 'feeding', 'begun', now(), NULL, 'local', NULL`,
    round: `'${SITE}', '${SITE}', NULL, 'Morning', now(), now(), 'local', '{}'`,
    round_entry: `'${SITE}', '${SITE}', '${SITE}', 'a', now(), now(), 'local', '1', NULL, NULL, NULL, NULL, NULL, NULL`,
    round_photo: `'${SITE}', '${SITE}', '${SITE}', now(), now(), 'local', 1, 1, '\\x00'`,
    round_sheet_version: `'${SITE}', '${SITE}', 1, '{}', now(), NULL, NULL`,
    round_signature: `'${SITE}', '${SITE}', '${SITE}', 'signed', now(), 'local', NULL`,
    rota_change: `'${SITE}', '${SITE}', 'leave', '${SITE}', now(), now() + interval '1 day', NULL, NULL, NULL, NULL, NULL, NULL, 'local', now()`,
    rota_change_event: `'${SITE}', '${SITE}', 1, 'approved', 'local', now(), NULL`,
    incident: `'${SITE}', '${SITE}', 1, 'Flood', NULL, NULL, now(), 'local'`,
    incident_entry: `'${SITE}', '${SITE}', '${SITE}', 'log', now(), now(), 'local', '{}', NULL, NULL`,
    review_kept: `'${SITE}', '${SITE}', '${SITE}', now(), now(), 'a', '1', ${zero}, '{}', ${zero}`,
    key_handed: `'${SITE}', '${SITE}', 'pump room', NULL, 'at the gate', now(), '${SITE}'`,
    call_out: `'${SITE}', '${SITE}', '${SITE}', NULL, NULL, 'pump room', now(), now()`,
    call_out_event: `'${SITE}', '${SITE}', '${SITE}', 'back', 0, 0, now(), '${SITE}', NULL, NULL`,
    test_call: `'${SITE}', '${SITE}', '${SITE}', now(), NULL`,
    test_call_answer: `'${SITE}', '${SITE}', now(), 'mail', NULL`,
    state_asked: `'${SITE}', '${SITE}', '${SITE}', 'feeding', 'watts', now(), now(), '{}'`,
    state_call: `'${SITE}', '${SITE}', '${SITE}', '${SITE}', now(), 0, 'local', 'mail', now(), 'taken', NULL`,
    state_answered: `'${SITE}', '${SITE}', now(), 'local', false, NULL`,
    signature_asked: `'${SITE}', '${SITE}', NULL, 'ozone-return', '${SITE}', now(), 'local', NULL`,
    signature_given: `'${SITE}', '${SITE}', now(), 'other', true, 'looked'`,
    site_notice: `'${SITE}', '${SITE}', 'paint', 'walls', '{}', 'shut', now(), now() + interval '1 hour', now(), 'local'`,
    site_notice_end: `'${SITE}', '${SITE}', now(), 'local', NULL`,
    animal_watch: `'${SITE}', '${SITE}', '${SITE}', 'the ray', 'off its food', now() + interval '1 day', now(), 'local'`,
    animal_watch_end: `'${SITE}', '${SITE}', now(), 'local', 'eats'`,
    taken_back: `'${SITE}', 'state-look', '${SITE}', now(), 'local', 'the wrong pump'`,
    handover: `'${SITE}', '${SITE}', now(), 'local', NULL, '{}', ${zero}`,
    handover_taken: `'${SITE}', '${SITE}', now(), 'other', 'session', NULL`,
    safeguard_test: `'${SITE}', '${SITE}', '${SITE}', now(), 'worked', NULL, NULL, now()`,
  };
  await query(`SET session_replication_role = replica; INSERT INTO ${table} VALUES (${rows[table]})`);
}
