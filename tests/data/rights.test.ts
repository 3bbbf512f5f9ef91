import { describe, expect, test } from 'vitest';
import { pool } from '#data/pool';
import { freshDatabase } from '../_support/database';

const { query } = freshDatabase();

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

/** A change that changes nothing, of tables without a site. */
const SAME: Record<string, string> = { account_event: 'id = id', reading_retired: '"month" = "month"' };

/** What PostgreSQL answers to those who may not (SQLSTATE, class 42). */
const MAY_NOT = { code: '42501' };

/** A statement with the rights of the processes: the pool is the one that `_data` asks through. */
const asProcess = (sql: string) => pool().query(sql);

describe('with the rights of the processes', () => {
  test('a guarded table is every table that its triggers guard', async () => {
    const { rows } = await query(
      `SELECT DISTINCT t.tgrelid::regclass::text AS found FROM pg_trigger t JOIN pg_proc f ON f.oid = t.tgfoid
        WHERE f.proname = 'refuse_change' ORDER BY found`,
    );
    expect(rows.map(({ found }) => found)).toEqual(ONLY_ADDED);
  });

  test.each(
    ONLY_ADDED.flatMap((table) =>
      [
        `UPDATE ${table} SET ${SAME[table] ?? 'site_id = site_id'}`,
        `DELETE FROM ${table}`,
        `TRUNCATE ${table} CASCADE`,
        `ALTER TABLE ${table} DISABLE TRIGGER ALL`,
        `ALTER TABLE ${table} DISABLE TRIGGER only_added`,
        `DROP TRIGGER only_added ON ${table}`,
        `ALTER TABLE ${table} ADD COLUMN more text`,
        `DROP TABLE ${table} CASCADE`,
        `CREATE RULE elsewhere AS ON INSERT TO ${table} DO INSTEAD NOTHING`,
        `CREATE TRIGGER other BEFORE INSERT ON ${table} EXECUTE FUNCTION refuse_change()`,
      ].map((sql) => [sql]),
    ),
  )('fails for want of rights: %s', async (sql) => {
    await expect(asProcess(sql)).rejects.toMatchObject(MAY_NOT);
  });

  test.each([
    ['SET session_replication_role = replica'],
    ['CREATE OR REPLACE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN RETURN OLD; END $$'],
    ['DROP FUNCTION refuse_change() CASCADE'],
    ['CREATE TABLE public.beside (id int)'],
    ['DROP SCHEMA public CASCADE'],
    ['SET ROLE holdfast'],
    ['ALTER ROLE holdfast_app SUPERUSER'],
    ['UPDATE _prisma_migrations SET checksum = checksum'],
    ['DELETE FROM _prisma_migrations'],
    ['UPDATE plan_in_force SET version = version'],
    ['UPDATE pg_trigger SET tgenabled = tgenabled'],
  ])('there is no way around: %s', async (sql) => {
    await expect(asProcess(sql)).rejects.toMatchObject({ code: expect.stringMatching(/^(42501|55000)$/) });
  });

  test('no guarded table can be changed, removed from, emptied or leaned on, also column by column', async () => {
    // PostgreSQL answers this with a warning, since there are other rights on the tables; what counts is that none is gained.
    for (const table of ONLY_ADDED) await asProcess(`GRANT ALL ON ${table} TO holdfast_app, holdfast_process`);
    const { rows } = await query(
      `SELECT c.relname, p.may FROM pg_class c, unnest(ARRAY['UPDATE', 'DELETE', 'TRUNCATE', 'REFERENCES', 'TRIGGER']) p(may)
        WHERE c.relname = ANY($1) AND c.relkind = 'r' AND (has_table_privilege('holdfast_process', c.oid, p.may)
           OR (p.may IN ('UPDATE', 'REFERENCES') AND has_any_column_privilege('holdfast_process', c.oid, p.may)))`,
      [ONLY_ADDED],
    );
    expect(rows).toEqual([]);
  });

  test('every other table of ours can be read and written, so that none was forgotten', async () => {
    const { rows } = await query(
      `SELECT c.oid::regclass::text AS table, p.may FROM pg_class c
         JOIN pg_namespace n ON n.oid = c.relnamespace AND n.nspname IN ('public', 'graphile_worker'),
              unnest(ARRAY['SELECT', 'INSERT', 'UPDATE', 'DELETE']) p(may)
        WHERE c.relkind IN ('r', 'p') AND NOT has_table_privilege('holdfast_process', c.oid, p.may)
          AND NOT (c.relname = ANY($1) AND p.may IN ('UPDATE', 'DELETE'))`,
      [[...ONLY_ADDED, '_prisma_migrations', 'migrations']],
    );
    // The two tables of migrations are read and no more.
    expect(rows.every(({ table, may }) => /migrations$/.test(table) && may === 'INSERT')).toBe(true);
    expect(rows).toHaveLength(2);
  });

  test('a part of the readings is made as its owner makes it, whatever whoever asks has put in the way', async () => {
    const client = await pool().connect();
    try {
      await client.query(`CREATE TEMPORARY TABLE reading (LIKE public.reading);
        CREATE FUNCTION pg_temp.format(text, VARIADIC text[]) RETURNS text LANGUAGE sql AS $$ SELECT 'DROP TABLE public.record CASCADE' $$;
        CREATE FUNCTION pg_temp.date_trunc(text, timestamp) RETURNS timestamp LANGUAGE sql AS $$ SELECT '1990-01-01'::timestamp $$;
        SET search_path = pg_temp, public; SET TimeZone = 'Pacific/Apia'; SET DateStyle = 'German, DMY'`);
      await client.query(`SELECT public.make_reading_part('2011-12-30')`);
      const { rows } = await query(
        `SELECT pg_get_expr(c.relpartbound, c.oid) AS bounds, c.relowner = p.relowner AS "isOwners"
           FROM pg_class c, pg_class p WHERE c.oid = 'reading_parts.reading_2011_12'::regclass AND p.oid = 'public.reading'::regclass`,
      );
      expect(rows).toEqual([{ isOwners: true, bounds: expect.stringContaining('2011-12-01 00:00:00+00') }]);
      await expect(client.query('DELETE FROM reading_parts.reading_2011_12')).rejects.toMatchObject(MAY_NOT);
      const endless = ["'infinity'", "'-infinity'", "'1989-12-31'", "'9999-01-01'"];
      for (const day of endless)
        await expect(client.query(`SELECT public.make_reading_part(${day})`)).rejects.toMatchObject({ code: '22008' });
    } finally {
      client.release(true);
    }
  });

  test('a row can still be added and read', async () => {
    const id = '019a0000-0000-7000-8000-00000000000a';
    await asProcess(`INSERT INTO account_event (id, at, kind, detail) VALUES ('${id}', now(), 'test', '{}')`);
    expect((await asProcess('SELECT id FROM account_event')).rows).toEqual([{ id }]);
  });
});
