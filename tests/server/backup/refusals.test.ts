import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync, gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { BackupFault } from '#server/backup/backup-fault';
import { readBackup } from '#server/backup/read-backup';
import { restoreBackup } from '#server/backup/restore-backup';
import { writeBackup } from '#server/backup/write-backup';
import { ROOT } from '../../../app/_start/places.mjs';
import { facility } from '../../_support/build-facility';
import { type Copy, copyTemplate, emptyDatabase, freshDatabase } from '../../_support/database';
import { fillAccounts } from '../../_support/fill-accounts';
import { runProgram } from '../../_support/run-program';
import { keep } from '../../_support/stored';
import { temporaryFolder } from '../../_support/temporary-folder';

const { query } = freshDatabase();
const folder = temporaryFolder();
const good = join(folder, 'good.backup');
const bad = join(folder, 'bad.backup');
const migrations = join(ROOT, 'prisma/migrations');
let empty: Copy;
let text = '';

beforeAll(async () => {
  await keep(facility());
  await fillAccounts(query);
  await writeBackup(good, new Date());
  text = gunzipSync(readFileSync(good)).toString('utf8');
  empty = await emptyDatabase();
});
afterAll(() => empty.drop());

const restore = (path: string, takeBroken = false) => restoreBackup({ path, url: empty.url, migrations, takeBroken });

async function relations(): Promise<number> {
  const sql = `SELECT count(*)::int AS n FROM pg_class WHERE relnamespace = 'public'::regnamespace`;
  return (await empty.query(sql)).rows[0].n;
}

/** Tries to restore a text, packed as a backup is; afterwards the database must be as empty as before. */
async function refusal(altered: string): Promise<string> {
  expect(altered).not.toBe(text);
  writeFileSync(bad, gzipSync(altered));
  const error = await restore(bad).catch((thrown: unknown) => thrown);
  expect(error).toBeInstanceOf(BackupFault);
  expect(await relations()).toBe(0);
  return (error as Error).message;
}

/** The same text with its check sum worked out again, as whoever forges a backup would. */
function forged(altered: string): string {
  const lines = altered.trimEnd().split('\n');
  lines.pop();
  const body = `${lines.join('\n')}\n`;
  return `${body}${JSON.stringify({ sha256: createHash('sha256').update(body).digest('hex') })}\n`;
}

/** The same text with another header. */
function headed(change: (header: Record<string, unknown>) => object): string {
  const end = text.indexOf('\n');
  return forged(`${JSON.stringify(change(JSON.parse(text.slice(0, end))))}${text.slice(end)}`);
}

/** A row of a table, as the backup writes it: the n-th, from 0. */
function rowOf(table: string, n: number): string {
  return text.split(`{"table":"${table}"}\n`)[1]?.split('\n')[n] ?? '';
}

describe('a file that is not as it was written is refused, and leaves nothing behind', () => {
  test('when it is cut short, packed or unpacked, wherever', async () => {
    const packed = readFileSync(good);
    for (const share of [0.01, 0.3, 0.7, 0.999]) {
      writeFileSync(bad, packed.subarray(0, Math.floor(packed.length * share)));
      await expect(restore(bad)).rejects.toThrow(/bad\.backup cannot be used: it is cut short/);
    }
    for (const share of [0.3, 0.6, 0.9, 0.9999])
      expect(await refusal(text.slice(0, Math.floor(text.length * share)))).toContain(
        'cannot be used: it is cut short',
      );
    const lines = text.split('\n');
    expect(await refusal(`${lines.slice(0, -2).join('\n')}\n`)).toContain('it is cut short');
    expect(await relations()).toBe(0);
  });

  test('when any one byte of it is another one', async () => {
    const bytes = Buffer.from(text);
    const anyByte = fc.tuple(fc.nat(bytes.length - 1), fc.integer({ min: 1, max: 255 }));
    await fc.assert(
      fc.asyncProperty(anyByte, async ([at, turn]) => {
        const altered = Buffer.from(bytes);
        altered[at] = (bytes[at] ?? 0) ^ turn;
        writeFileSync(bad, gzipSync(altered, { level: 1 }));
        await expect(readBackup(bad)).rejects.toBeInstanceOf(BackupFault);
      }),
      { numRuns: 60 },
    );
    expect(await refusal(text.replace('Harbour Aquarium', 'Harbour aquarium'))).toContain('it was altered');
    expect(await refusal(`${text}\n`)).toContain('something follows its end');
  });

  test('when it is no backup, or there is no such file', async () => {
    writeFileSync(bad, 'a letter');
    await expect(restore(bad)).rejects.toThrow('it is no backup');
    expect(await refusal('{"format":"something.else/1"}\n')).toContain('no backup of the form holdfast.backup/1');
    expect(await refusal(headed((header) => ({ ...header, format: 'holdfast.backup/2' })))).toContain('of the form');
    await expect(restore(join(folder, 'nowhere'))).rejects.toThrow('there is no such file');
  });
});

describe('a forged file, whose check sum was worked out again, is refused all the same', () => {
  test('when a link of a record was changed: its own seal tells', async () => {
    const link = rowOf('record', 3);
    const sentence = await refusal(forged(text.replace(link, link.replace(/\t[a-z-]+\t\{/, '\tunsaid\t{'))));
    expect(sentence).toMatch(/is broken \(site [0-9a-f-]{36}, link 4: not as it was sealed\)/);
  });

  test('when a link, or any other row, was taken out: the foot counts them', async () => {
    expect(await refusal(forged(text.replace(`${rowOf('record', 3)}\n`, '')))).toContain('numbers of rows');
    expect(await refusal(forged(text.replace(`${rowOf('tank', 0)}\n`, '')))).toMatch(/numbers of rows|foreign key/);
  });

  test('when the last link of a record is another one than the foot says', async () => {
    expect(await refusal(forged(text.replace(/"seal":"../, '"seal":"00')))).toContain('last links of the records');
  });

  test('when rows do not fit their tables, or there is no such table', async () => {
    expect(await refusal(forged(text.replace(rowOf('room', 0), 'nonsense')))).toContain('does not fit its own tables');
    expect(await refusal(forged(text.replaceAll('"room"', '"rooms"')))).toContain('lay no table rooms');
  });
});

describe('a good backup is refused', () => {
  test('when a newer Holdfast made it, by the name of what this one does not know', async () => {
    const later = { name: '29990101000000_from_the_future', checksum: '' };
    const sentence = await refusal(
      headed((header) => ({ ...header, migrations: [...(header.migrations as []), later] })),
    );
    expect(sentence).toContain('made by a newer Holdfast: it has the migration 29990101000000_from_the_future');
  });

  test('when it was made under another text of a migration', async () => {
    const change = (header: Record<string, unknown>) => {
      const [first, ...rest] = header.migrations as { name: string; checksum: string }[];
      return { ...header, migrations: [{ ...first, checksum: 'another' }, ...rest] };
    };
    expect(await refusal(headed(change))).toContain(
      'under another text of the migration 20261125000000_worker_sighting',
    );
  });

  test('into a database that is not empty, which is left as it is', async () => {
    const full = await copyTemplate();
    const ended = await runProgram(['app/_start/restore.mjs', good, '--into', full.url]);
    expect(ended).toMatchObject({ code: 1, stdout: '' });
    expect(ended.stderr).toBe(
      'The database is not empty, and a backup is restored into an empty one only: it was left as it is.\n',
    );
    expect((await full.query('SELECT count(*)::int AS n FROM account')).rows).toEqual([{ n: 0 }]);
    await full.drop();
  });
});

describe('a record that was broken before it was backed up', () => {
  beforeEach(async () => {
    await empty.drop();
    empty = await emptyDatabase();
  });

  test('is refused by name, and taken as it is when that is said', async () => {
    await query(`SET session_replication_role = replica; UPDATE record SET kind = 'unsaid' WHERE seq = 2`);
    await writeBackup(bad, new Date());
    await expect(restore(bad)).rejects.toThrow('link 2: not as it was sealed');
    expect(await relations()).toBe(0);
    expect((await restore(bad, true)).broken).toEqual([expect.stringContaining('link 2: not as it was sealed')]);
    expect((await empty.query('SELECT kind FROM record WHERE seq = 2')).rows).toEqual([{ kind: 'unsaid' }]);
  });
});
