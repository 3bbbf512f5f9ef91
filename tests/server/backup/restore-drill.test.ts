import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { readBackup } from '#server/backup/read-backup';
import { writeBackup } from '#server/backup/write-backup';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { LEFT_OUT } from '#data/backup/left-out';
import { compare } from '../../../prisma/engine/difference.mjs';
import { type Copy, emptyDatabase, freshDatabase } from '../../_support/database';
import { fillAccounts } from '../../_support/fill-accounts';
import { runProgram } from '../../_support/run-program';
import { everyRow, everyShape, tableNames } from '../../_support/same-rows';
import { startWriter, type Writer } from '../../_support/start-writer';
import { temporaryFolder } from '../../_support/temporary-folder';

const { query } = freshDatabase();
const folder = temporaryFolder();
const KEY = 'drill';
const TSX = ['--conditions=react-server', '--import', 'tsx'];
const made: Copy[] = [];
let writer: Writer;

beforeAll(async () => {
  await fillAccounts(query);
  writer = startWriter(KEY, process.env.DATABASE_URL ?? '');
});
afterAll(async () => {
  writer.child.kill('SIGKILL');
  for (const copy of made) await copy.drop();
});

const until = (entries: number) =>
  vi.waitFor(() => expect(writer.entries.length).toBeGreaterThanOrEqual(entries), { timeout: 30_000, interval: 5 });

async function restored(file: string): Promise<Copy> {
  const copy = await emptyDatabase();
  made.push(copy);
  const ended = await runProgram(['app/_start/restore.mjs', file, '--into', copy.url]);
  expect(ended).toMatchObject({ code: 0, stderr: '' });
  expect(ended.stdout).toContain('every record is whole');
  return copy;
}

const RECORD = 'SELECT seq, kind, body, at, prev_hash, hash FROM record ORDER BY seq';

describe('a backup that is taken while others write', () => {
  const file = join(folder, 'under-load.backup');
  let copy: Copy;
  let before: { entries: number; imports: number };

  beforeAll(async () => {
    await until(40);
    before = { entries: writer.entries.length, imports: writer.imports.length };
    await writeBackup(file, new Date());
    await until(before.entries + 20);
    copy = await restored(file);
  });

  test('holds the record up to one instant: row for row what stands there first, and nothing after', async () => {
    const kept = (await copy.query(RECORD)).rows;
    const all = (await query(RECORD)).rows;
    expect(kept.length).toBeLessThan(all.length);
    expect(kept).toEqual(all.slice(0, kept.length));
  });

  test('holds every write that was answered before it began, each once, in one unbroken row', async () => {
    const found = await copy.query("SELECT (body->>'n')::int AS n FROM record WHERE kind = 'drill-entry' ORDER BY seq");
    const kept = found.rows.map(({ n }) => n);
    expect(kept).toEqual(writer.entries.slice(0, kept.length));
    expect(kept.length).toBeGreaterThanOrEqual(before.entries);
    expect(writer.failed).toEqual([]);
  });

  test('holds the site as its record says it was at that instant', async () => {
    const { rows } = await copy.query(
      `SELECT revision, detail->>'altitudeM' AS altitude,
              (SELECT count(*)::int FROM record WHERE kind = 'facility-imported') AS imports FROM site`,
    );
    const { revision, altitude, imports } = rows[0];
    expect(imports).toBeGreaterThanOrEqual(before.imports);
    expect(revision).toBe(imports);
    expect(Number(altitude)).toBe(writer.imports[imports - 1]);
  });

  test('is readable by its owner alone, and nothing half-written lies beside it', () => {
    expect(statSync(file).mode & 0o777).toBe(0o600);
    expect(readdirSync(folder)).toEqual(['under-load.backup']);
  });
});

describe('a backup of a quiet database', () => {
  const file = join(folder, 'quiet.backup');
  let copy: Copy;

  beforeAll(async () => {
    writer.child.kill('SIGKILL');
    await vi.waitFor(async () => {
      const { rows } = await query(`SELECT count(*)::int AS others FROM pg_stat_activity
        WHERE datname = current_database() AND state <> 'idle' AND pid <> pg_backend_pid()`);
      expect(rows[0].others).toBe(0);
    });
    const ended = await runProgram([
      '--conditions=react-server',
      '--import',
      'tsx',
      'app/_server/command/backup.ts',
      file,
    ]);
    expect(ended).toMatchObject({ code: 0, stderr: '' });
    copy = await restored(file);
  });

  test('comes back row for row and value for value, awkward ones too', async () => {
    const rows = await everyRow(query);
    expect(rows.account).toHaveLength(2);
    expect(rows.passkey).toHaveLength(1);
    expect(await everyRow(copy.query)).toEqual(rows);
  });

  test('comes back with every key, check, trigger, function, view and right, and as Prisma knows the tables', async () => {
    expect(await everyShape(copy.query)).toEqual(await everyShape(query));
    const env = { ...process.env, DATABASE_URL: copy.url };
    expect(compare(['--from-config-datasource', '--to-schema', 'prisma/schema.prisma'], env)).toMatchObject({
      same: true,
    });
  });

  test('holds every table but those left out by name, which all exist', async () => {
    const { header } = await readBackup(file);
    const held = header.tables.map(({ name }) => name);
    expect([...held, ...LEFT_OUT].sort()).toEqual(await tableNames(query));
    expect((await query('SELECT count(*)::int AS n FROM session')).rows).toEqual([{ n: 1 }]);
    expect((await copy.query('SELECT count(*)::int AS n FROM session')).rows).toEqual([{ n: 0 }]);
  });

  test('comes back with a whole chain', async () => {
    const audit = await runProgram([...TSX, 'app/_server/command/audit.ts'], { DATABASE_URL: copy.url });
    expect(audit).toMatchObject({ code: 0, stderr: '' });
    const { rows } = await query('SELECT seq FROM record_head');
    expect(audit.stdout).toContain(`(${KEY}): whole, ${rows[0].seq} links\n`);
  });

  test('is not written over a file that is there', async () => {
    const again = await runProgram([
      '--conditions=react-server',
      '--import',
      'tsx',
      'app/_server/command/backup.ts',
      file,
    ]);
    expect(again).toMatchObject({ code: 2, stdout: '' });
    expect(again.stderr).toContain('is there already');
    expect(existsSync(file)).toBe(true);
  });
});
