import { statfsSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { simpleParser } from 'mailparser';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { z } from 'zod';
import { ok } from '#core/result';
import { databasePlace } from '#server/machine/database-place';
import { roomOf, roomState, warnUnder } from '#server/machine/room';
import type { Who } from '#server/gate/who';
import { freshDatabase } from '../../_support/database';
import { type MailServer, startMailServer } from '../../_support/mail-server';
import { anAccount, headersOf } from '../../_support/signed-in';
import { temporaryFolder } from '../../_support/temporary-folder';

// Next knows of a request only inside its own server: here its headers are those of a signed-in browser.
const request = { headers: new Headers() };
vi.mock('next/headers', () => ({ headers: async () => request.headers }));

const { query } = freshDatabase();
const data = temporaryFolder();
/** More than any disk has, in MB: the disk at hand is nearly full, or full. */
const MORE = '1000000000';
let mail: MailServer;

beforeEach(async () => {
  mail = await startMailServer();
  vi.stubEnv('HOLDFAST_DATA', data);
  vi.stubEnv('HOLDFAST_BACKUP_FOLDER', join(data, 'backups'));
  vi.stubEnv('HOLDFAST_MAIL_URL', mail.url);
  vi.resetModules();
  await query('DELETE FROM disk_sighting; DELETE FROM notice_sent');
});
afterEach(async () => {
  vi.unstubAllEnvs();
  await mail.close();
});

const GB = 1e9;
const low = () => vi.stubEnv('HOLDFAST_DISK_WARN_MB', MORE);
const full = () => vi.stubEnv('HOLDFAST_DISK_STOP_MB', MORE);
const who = (given: Partial<Who>): Who => ({ id: 'somebody', name: 'Somebody', everywhere: null, at: {}, ...given });
const ADMIN = who({ everywhere: 'admin' });

describe('the room of a disk', () => {
  test('is that which the system says, also of a folder that is not there yet', async () => {
    const { bavail, bsize, blocks } = statfsSync(data);
    const room = await roomOf(join(data, 'not', 'there'));
    expect(room?.total).toBe(blocks * bsize);
    // Others write to the same disk meanwhile.
    expect(Math.abs((room?.free ?? 0) - bavail * bsize)).toBeLessThan(5 * GB);
  });

  test.each([
    ['a tenth of a small disk', 20, 2],
    ['5 GB of a large one', 1000, 5],
    ['never under 1 GB', 4, 1],
  ])('is little under %s', (_what, total, under) => {
    expect(warnUnder(total * GB)).toBe(under * GB);
    expect(roomState({ free: under * GB, total: total * GB })).toBe('plenty');
    expect(roomState({ free: under * GB - 1, total: total * GB })).toBe('low');
    expect(roomState({ free: 0.2 * GB, total: total * GB })).toBe('low');
    expect(roomState({ free: 0.2 * GB - 1, total: total * GB })).toBe('none');
  });

  test('is claimed of the database only where it lies in the data folder', async () => {
    expect(await databasePlace()).toBe('elsewhere');
  });
});

describe('a look at the disks', () => {
  // Loaded anew, so that the mail server of this very test is the one that was named.
  const watch = async (at: Date) => (await import('#server/machine/watch-disks')).watchDisks(at);
  const note = async (person: Who) => (await import('#server/machine/machine-note')).machineNote(person);
  const at = new Date();
  const later = (hours: number) => new Date(at.getTime() + hours * 3_600_000);

  beforeEach(async () => {
    await query('DELETE FROM account');
    await anAccount({ email: 'admin@holdfast.example', everywhere: 'admin' });
    await anAccount({ email: 'keeper@holdfast.example' });
  });

  test('is kept, and is no reason to write to anybody while there is room', async () => {
    await watch(at);
    const { rows } = await query(
      'SELECT machine, folder, holds, free_bytes > 0 AS free FROM disk_sighting ORDER BY holds',
    );
    expect(rows).toEqual([
      { machine: hostname(), folder: join(data, 'backups'), holds: 'backups', free: true },
      { machine: hostname(), folder: data, holds: 'data', free: true },
    ]);
    expect(mail.taken).toEqual([]);
    expect(await note(ADMIN)).toEqual({ ok: true, value: { room: null, maySeeMachine: true, watch: null } });
  });

  test('is written to the administrators when one is nearly full, once a day', async () => {
    low();
    vi.spyOn(console, 'log').mockReturnValue(undefined);
    await Promise.all([watch(at), watch(at)]);
    await watch(later(23.9));
    expect(mail.taken.map(({ to }) => to)).toEqual([['admin@holdfast.example'], ['admin@holdfast.example']]);
    const texts = (await Promise.all(mail.taken.map(({ raw }) => simpleParser(raw))))
      .map(({ text }) => text)
      .join('\n');
    expect(texts).toContain('Under 200 MB Holdfast takes no more changes');
    expect(texts).toContain('HOLDFAST_BACKUP_FOLDER');
    await watch(later(24.1));
    expect(mail.taken).toHaveLength(4);
  });

  test('is written again within the hour when the mail did not go out', async () => {
    low();
    vi.stubEnv('HOLDFAST_BACKUP_FOLDER', 'off');
    vi.spyOn(console, 'log').mockReturnValue(undefined);
    const logged = vi.spyOn(console, 'error').mockReturnValue(undefined);
    await query(`UPDATE account SET email = 'nobody@holdfast.example' WHERE everywhere = 'admin'`);
    await watch(at);
    await watch(later(0.9));
    expect(logged).toHaveBeenCalledExactlyOnceWith(expect.stringContaining('mail about a disk could not be sent'));
    await query(`UPDATE account SET email = 'admin@holdfast.example' WHERE everywhere = 'admin'`);
    await watch(later(1.1));
    expect(mail.taken).toHaveLength(1);
  });

  test('stands on every page of those who enter something, and of nobody else', async () => {
    low();
    await watch(at);
    const room = { state: 'low', holds: 'data', free: expect.stringMatching(/^[\d.]+ [GM]B$/) };
    const aquarist = who({ at: { harbour: 'aquarist' } });
    expect(await note(aquarist)).toEqual({ ok: true, value: { room, maySeeMachine: false, watch: null } });
    const viewer = who({ everywhere: 'viewer', at: { harbour: 'viewer' } });
    expect(await note(viewer)).toEqual({ ok: true, value: { room: null, maySeeMachine: false, watch: null } });
    full();
    expect(await note(aquarist)).toMatchObject({ value: { room: { state: 'none' } } });
  });

  test('is shown with the rest of the machine to administrators everywhere, and is no page for others', async () => {
    await watch(at);
    const { getMachine } = await import('#server/machine/get-machine');
    const shown = await getMachine(ADMIN);
    expect(shown).toMatchObject({
      ok: true,
      value: {
        backups: { state: 'none' },
        disks: [{ holds: 'data', state: 'plenty' }, { holds: 'backups' }],
        worker: { worker: 'never seen' },
        database: { version: expect.stringMatching(/^17\./), place: 'elsewhere' },
        anchor: null,
      },
    });
    for (const person of [who({ everywhere: 'manager' }), who({ at: { harbour: 'admin' } })])
      expect(await getMachine(person)).toEqual({ ok: false, reason: { why: 'not-found', what: 'page' } });
  });
});

describe('a disk without room', () => {
  const change = vi.fn(async () => ok('done'));
  const submit = async () => (await import('#server/gate/act')).act(z.object({}), change)(null, new FormData());

  test('refuses every change before it is begun but the end of an access, and lets reading go on', async () => {
    request.headers = await headersOf(await anAccount());
    expect(await submit()).toEqual({ ok: true, value: 'done' });
    full();
    expect(await submit()).toMatchObject({
      ok: false,
      reason: { why: 'no-room' },
      said: expect.stringContaining('reading goes on'),
    });
    expect(change).toHaveBeenCalledTimes(1);
    const { act } = await import('#server/gate/act');
    const letGo = act(z.object({}), change, () => [], { always: true });
    expect(await letGo(null, new FormData())).toEqual({ ok: true, value: 'done' });
    const read = (await import('#server/gate/ask')).ask(z.undefined(), async () => ok('read'));
    expect(await read(undefined)).toEqual({ ok: true, value: 'read' });
  });

  test('says nothing of itself to whoever is not known', async () => {
    request.headers = new Headers({ host: 'localhost:3200' });
    full();
    expect(await submit()).toMatchObject({ ok: false, reason: { why: 'not-signed-in' } });
  });
});
