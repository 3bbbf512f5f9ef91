import { readFileSync, rmSync, statSync } from 'node:fs';
import { createServer, type Server } from 'node:net';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { embeddedServer, stopEmbedded } from '../../app/_start/postgres/server.mjs';
import { notedServer } from '../../app/_start/postgres/running.mjs';
import { addressOf, readStored, type Stored } from '../../app/_start/postgres/stored.mjs';
import { ask } from '../_support/database';
import { temporaryFolder } from '../_support/temporary-folder';

const data = temporaryFolder();
const folder = join(data, 'postgres');

function stored(): Stored {
  const found = readStored(data);
  if (!found) throw new Error('Nothing is remembered about the server.');
  return found;
}

const onServer = (sql: string) => ask(addressOf(stored(), 'postgres'), sql);
const pid = () => notedServer(folder)?.pid ?? 0;

beforeAll(async () => {
  await embeddedServer(data);
});
afterAll(() => stopEmbedded(data));

describe('the embedded server', () => {
  test('is a PostgreSQL 17 in UTC that listens on this machine alone, and asks for a password', async () => {
    const { rows } = await onServer(
      `SELECT current_setting('server_version') AS version, current_setting('timezone') AS zone,
              current_setting('listen_addresses') AS address, current_setting('unix_socket_directories') AS socket,
              current_setting('password_encryption') AS password`,
    );
    expect(rows[0]).toMatchObject({ zone: 'UTC', address: '127.0.0.1', socket: '', password: 'scram-sha-256' });
    expect(rows[0].version).toMatch(/^17\./);
    const wrong = addressOf({ ...stored(), password: 'wrong' }, 'postgres');
    await expect(ask(wrong, 'SELECT 1')).rejects.toMatchObject({ code: '28P01' });
  });

  test('keeps its password where the owner alone can read it', () => {
    expect(statSync(join(data, 'database.json')).mode & 0o777).toBe(0o600);
    expect(stored().password.length).toBeGreaterThanOrEqual(32);
  });

  test('is found running and used by the next start', async () => {
    const before = pid();
    expect((await embeddedServer(data)).wasRunning).toBe(true);
    expect(pid()).toBe(before);
  });

  test('comes back with everything that was kept after it was killed', async () => {
    const server = await embeddedServer(data);
    await onServer('CREATE TABLE kept AS SELECT 42 AS answer');
    process.kill(pid(), 'SIGKILL');
    await vi.waitFor(() => expect(server.isAlive()).toBe(false), { timeout: 5000, interval: 10 });
    await server.startAgain();
    expect((await onServer('SELECT answer FROM kept')).rows).toEqual([{ answer: 42 }]);
  });

  test('takes another port, and remembers it, when its own was taken meanwhile', async () => {
    await stopEmbedded(data);
    const { port } = stored();
    const squatter = await occupy(port);
    try {
      await embeddedServer(data);
    } finally {
      squatter.close();
    }
    expect(stored().port).not.toBe(port);
    expect((await onServer('SELECT 1 AS one')).rows).toEqual([{ one: 1 }]);
  });

  test('is gone after it was stopped, and says so in its log', async () => {
    await stopEmbedded(data);
    expect(notedServer(folder)).toBeUndefined();
    expect(readFileSync(join(data, 'postgres.log'), 'utf8').trimEnd()).toMatch(/database system is shut down$/);
  });

  test('is not started over a database whose password is lost, and the missing file is named', async () => {
    rmSync(join(data, 'database.json'));
    await expect(embeddedServer(data)).rejects.toThrow('database.json');
  });
});

function occupy(port: number): Promise<Server> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => resolve(server));
  });
}
