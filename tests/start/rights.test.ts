import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { prepareDatabase } from '../../app/_start/database.mjs';
import { ROOT } from '../../app/_start/places.mjs';
import { embeddedServer, stopEmbedded } from '../../app/_start/postgres/server.mjs';
import { readStored, writeStored } from '../../app/_start/postgres/stored.mjs';
import { ask, type Copy, copyTemplate } from '../_support/database';
import { temporaryFolder } from '../_support/temporary-folder';

let copy: Copy;
const server = () => inject('databaseServer');

beforeAll(async () => {
  copy = await copyTemplate();
  await ask(server(), "DROP ROLE IF EXISTS plain; CREATE ROLE plain LOGIN PASSWORD 'plain'");
  await ask(server(), "DROP ROLE IF EXISTS guest; CREATE ROLE guest LOGIN PASSWORD 'guest'");
});
afterAll(() => copy.drop());

function addressFor(user: string): string {
  const address = new URL(copy.url);
  address.username = user;
  address.password = user;
  return address.href;
}

/** What a start does with a database of the person's own. @returns the address the processes get */
const prepare = async (url: string, ownerUrl?: string) =>
  (await prepareDatabase(ROOT, process.env, { url, ownerUrl, embedded: undefined })).url;

/** Gives every table, view and function of ours to an account without any further right. */
const giveTo = (user: string) =>
  copy.query(`
    DO $$ DECLARE thing text; BEGIN
      FOR thing IN SELECT format('%s %s', CASE relkind WHEN 'v' THEN 'VIEW' ELSE 'TABLE' END, oid::regclass) FROM pg_class
                    WHERE relnamespace IN ('public'::regnamespace, 'graphile_worker'::regnamespace) AND relkind IN ('r', 'v')
      LOOP EXECUTE format('ALTER %s OWNER TO ${user}', thing); END LOOP;
      FOR thing IN SELECT oid::regprocedure FROM pg_proc
                    WHERE pronamespace IN ('public'::regnamespace, 'graphile_worker'::regnamespace)
      LOOP EXECUTE format('ALTER FUNCTION %s OWNER TO ${user}', thing); END LOOP;
    END $$;
    ALTER SCHEMA public OWNER TO ${user}; ALTER SCHEMA graphile_worker OWNER TO ${user};
    ALTER DATABASE ${new URL(copy.url).pathname.slice(1)} OWNER TO ${user}`);

const breaksRecord = (url: string) => ask(url, 'DELETE FROM record');
const wakes = (url: string) => ask(url, "SELECT graphile_worker.add_job('heartbeat')");
const MAY_NOT = { code: '42501' };

describe('a database of the person’s own', () => {
  test('whose account may make a role has every session take it on, and each start finds it so again', async () => {
    const url = await prepare(copy.url);
    expect(new URL(url).searchParams.get('options')).toBe('-c role=holdfast_app');
    await expect(breaksRecord(url)).rejects.toMatchObject(MAY_NOT);
    await wakes(url);
    expect((await ask(url, 'SELECT count(*)::int AS jobs FROM graphile_worker.jobs')).rows).toEqual([{ jobs: 1 }]);
    expect(await prepare(copy.url)).toBe(url);
  });

  test('whose owner may not make roles is used all the same, guarded by triggers alone', async () => {
    await giveTo('plain');
    expect(await prepare(addressFor('plain'))).toBe(addressFor('plain'));
    await expect(breaksRecord(addressFor('plain'))).resolves.toMatchObject({ rowCount: 0 });
  });

  test('with two addresses is guarded by rights, also when the owner may not make roles', async () => {
    expect(await prepare(addressFor('guest'), addressFor('plain'))).toBe(addressFor('guest'));
    await expect(breaksRecord(addressFor('guest'))).rejects.toMatchObject(MAY_NOT);
    await expect(ask(addressFor('guest'), 'DROP TABLE record')).rejects.toMatchObject(MAY_NOT);
    await wakes(addressFor('guest'));
  });
});

describe('the embedded server of an older copy', () => {
  const data = temporaryFolder();
  afterAll(() => stopEmbedded(data));

  test('gains the account of the processes at the next start, and keeps it', async () => {
    const first = await embeddedServer(data);
    const { app: _, ...old } = readStored(data) ?? expect.fail('nothing is remembered');
    writeStored(data, old);
    const again = await embeddedServer(data);
    expect(again.ownerUrl).toBe(first.ownerUrl);
    expect(again.url).not.toBe(first.url);
    const database = { url: again.url, ownerUrl: again.ownerUrl, embedded: again };
    expect((await prepareDatabase(ROOT, process.env, database)).url).toBe(again.url);
    await expect(breaksRecord(again.url)).rejects.toMatchObject(MAY_NOT);
    await wakes(again.url);
    expect((await embeddedServer(data)).url).toBe(again.url);
    expect(readFileSync(join(data, 'postgres.log'), 'utf8')).not.toContain(new URL(again.url).password);
  });
});
