import { mkdirSync, readdirSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { alone } from '#data/backup/alone';
import { backupState } from '#server/backup/backup-state';
import { dailyBackup } from '#server/backup/daily-backup';
import { isBackupDue, nextSlot } from '#server/backup/due';
import { readBackup } from '#server/backup/read-backup';
import { backupName, instantOf, outOfTime } from '#server/backup/retention';
import { freshDatabase } from '../../_support/database';
import { temporaryFolder } from '../../_support/temporary-folder';

const { query } = freshDatabase();
const folder = join(temporaryFolder(), 'backups');
const at = (text: string) => new Date(`${text}Z`);

describe('the daily backup is due', () => {
  test.each([
    ['when none was ever made', null, null, '2026-11-25T00:00', true],
    ['when the hour has come round since the last', '2026-11-24T02:00', null, '2026-11-25T02:00', true],
    ['not before the hour', '2026-11-24T02:00:30', null, '2026-11-25T01:59', false],
    ['not twice after the same hour', '2026-11-25T02:00', null, '2026-11-25T23:59', false],
    ['when it was missed while nothing ran', '2026-11-20T02:00', null, '2026-11-25T01:00', true],
    ['not within an hour of a failure', '2026-11-24T02:00', '2026-11-25T02:00', '2026-11-25T02:59', false],
    ['again an hour after a failure', '2026-11-24T02:00', '2026-11-25T02:00', '2026-11-25T03:00', true],
  ])('%s', (_when, good, failed, now, isDue) => {
    const runs = { goodAt: good === null ? null : at(good), failedAt: failed === null ? null : at(failed) };
    expect(isBackupDue(runs, at(now), 2)).toBe(isDue);
  });

  test('next at the hour that comes', () => {
    expect(nextSlot(at('2026-11-25T01:59'), 2)).toEqual(at('2026-11-25T02:00'));
    expect(nextSlot(at('2026-11-25T02:00'), 2)).toEqual(at('2026-11-26T02:00'));
  });
});

describe('of the daily backups', () => {
  const DAY = 86_400_000;
  const daily = (days: number) => Array.from({ length: days }, (_, n) => backupName(new Date(n * DAY + 7_200_000)));

  test('the last fourteen days stay, and the last day of each of eight weeks', () => {
    const names = daily(365);
    const gone = new Set(outOfTime(names));
    const kept = names.filter((name) => !gone.has(name));
    expect(kept.slice(-14)).toEqual(names.slice(-14));
    // The weeks end on Sundays, but for the one that has not ended; three of the eight lie within the fourteen days.
    const older = kept.slice(0, -14).map((name) => instantOf(name)?.getUTCDay());
    expect(older).toEqual([0, 0, 0, 0, 0]);
  });

  test('nothing else is touched, the newest always stays, and a second look removes nothing more', () => {
    const names = fc.array(
      fc.oneof(
        fc.date({ min: at('2020-01-01T00:00'), max: at('2030-01-01T00:00'), noInvalidDate: true }).map(backupName),
        fc.string(),
      ),
    );
    fc.assert(
      fc.property(names, (given) => {
        const gone = outOfTime(given);
        const backups = given.filter((name) => instantOf(name) !== null).sort();
        expect(gone.every((name) => backups.includes(name))).toBe(true);
        expect(gone).not.toContain(backups.at(-1));
        expect(outOfTime(given.filter((name) => !gone.includes(name)))).toEqual([]);
      }),
    );
  });
});

describe('a worker', () => {
  beforeEach(async () => {
    vi.useFakeTimers({ toFake: ['Date'], now: at('2026-11-25T02:00:10') });
    vi.stubEnv('HOLDFAST_BACKUP_FOLDER', folder);
    rmSync(folder, { recursive: true, force: true });
    await query('DELETE FROM backup_run');
  });
  afterEach(() => {
    vi.useRealTimers();
    vi.unstubAllEnvs();
    vi.restoreAllMocks();
  });

  const runs = async () => (await query('SELECT path, problem FROM backup_run ORDER BY began_at')).rows;

  test('makes one backup a day, readable by its owner alone, and says where it lies and how old it is', async () => {
    await dailyBackup();
    await dailyBackup();
    const path = join(folder, 'holdfast-2026-11-25T020010Z.backup');
    expect(await runs()).toEqual([{ path, problem: null }]);
    expect(statSync(path).mode & 0o777).toBe(0o600);
    expect((await readBackup(path)).header.at).toBe('2026-11-25T02:00:10.000Z');
    vi.setSystemTime(at('2026-11-25T04:00:10'));
    const { size: bytes } = statSync(path);
    expect(await backupState()).toMatchObject({
      state: 'good',
      last: { at: '2026-11-25T02:00:10.000Z', path, bytes, ageS: 7200 },
      problem: null,
      nextAt: '2026-11-26T02:00:00.000Z',
    });
    vi.setSystemTime(at('2026-11-26T05:00:00'));
    expect(await backupState()).toMatchObject({ state: 'late' });
    await dailyBackup();
    expect(await runs()).toHaveLength(2);
  });

  test('does not make it twice at once, however many there are', async () => {
    await Promise.all(Array.from({ length: 4 }, () => dailyBackup()));
    expect(await runs()).toHaveLength(1);
    expect(readdirSync(folder)).toHaveLength(1);
  });

  test('leaves it to another one that is at it', async () => {
    await alone(async () => {
      await dailyBackup();
      expect(await alone(async () => undefined)).toBe(false);
    });
    expect(await runs()).toEqual([]);
    await dailyBackup();
    expect(await runs()).toHaveLength(1);
  });

  test('clears away what has had its time, and what was broken off a day ago', async () => {
    mkdirSync(folder, { recursive: true });
    const put = (name: string, day: string) => {
      writeFileSync(join(folder, name), '');
      utimesSync(join(folder, name), at(day), at(day));
    };
    put(backupName(at('2024-01-01T02:00:00')), '2024-01-01T02:00');
    for (let day = 1; day <= 20; day++)
      put(backupName(at(`2026-11-${String(day).padStart(2, '0')}T02:00:00`)), '2026-11-24T02:00');
    put('.old.1.part', '2026-11-23T02:00');
    put('.new.2.part', '2026-11-25T01:00');
    put('letter.txt', '2020-01-01T00:00');
    await dailyBackup();
    const kept = readdirSync(folder).sort();
    expect(kept).toContain('.new.2.part');
    expect(kept).toContain('letter.txt');
    expect(kept).not.toContain('.old.1.part');
    const dates = kept.flatMap((name) => instantOf(name)?.toISOString().slice(0, 10) ?? []);
    // Fourteen days that have one, from the 25th back; and of the weeks the 1st (a Sunday) and January 2024.
    expect(dates).toEqual([
      '2024-01-01',
      '2026-11-01',
      ...Array.from({ length: 13 }, (_, n) => `2026-11-${String(n + 8).padStart(2, '0')}`),
      '2026-11-25',
    ]);
  });

  test('keeps and logs why there is none, shows it, and tries again an hour later', async () => {
    const logged = vi.spyOn(console, 'error').mockReturnValue(undefined);
    writeFileSync(folder, 'a file where the folder should be');
    await dailyBackup();
    await dailyBackup();
    expect(await runs()).toEqual([{ path: null, problem: expect.stringContaining('EEXIST') }]);
    expect(logged).toHaveBeenCalledExactlyOnceWith(expect.stringContaining('backup failed'));
    expect(await backupState()).toMatchObject({
      state: 'none',
      last: null,
      problem: { words: expect.stringContaining('EEXIST') },
    });
    rmSync(folder);
    vi.setSystemTime(at('2026-11-25T03:00:20'));
    await dailyBackup();
    expect(await backupState()).toMatchObject({ state: 'good', problem: null });
  });

  test('makes none where they are switched off, and says so', async () => {
    vi.stubEnv('HOLDFAST_BACKUP_FOLDER', 'off');
    await dailyBackup();
    expect(await runs()).toEqual([]);
    expect(await backupState()).toMatchObject({ state: 'off', nextAt: null });
  });
});
