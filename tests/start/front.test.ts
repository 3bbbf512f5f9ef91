import { once } from 'node:events';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import { request } from 'node:https';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { frontProgram, spawnChild } from '../../app/_start/children/spawn-child.mjs';
import { untilItAnswers } from '../../app/_start/children/ready.mjs';
import { frontOf } from '../../app/_start/front.mjs';
import { ROOT } from '../../app/_start/places.mjs';
import { freePort } from '../../app/_start/postgres/port.mjs';
import { temporaryFolder } from '../_support/temporary-folder';
import { CERTIFICATE, KEY } from '../_support/test-certificate';

const machine = { hostname: 'Tankhouse', addresses: ['203.0.113.9', '192.168.7.20'] };
const folder = temporaryFolder();
const files = { HOLDFAST_TLS_CERT: join(folder, 'a.crt'), HOLDFAST_TLS_KEY: join(folder, 'a.key') };

beforeAll(() => {
  writeFileSync(files.HOLDFAST_TLS_CERT, CERTIFICATE);
  writeFileSync(files.HOLDFAST_TLS_KEY, KEY);
});

describe('other machines are let in', () => {
  const front = (isWanted: boolean, said: Record<string, string> = {}) =>
    frontOf(isWanted, said as NodeJS.ProcessEnv, machine);

  test('only when it was asked for, at an address of the network unless another was said', () => {
    expect(front(false)).toBeUndefined();
    expect(front(false, { HOLDFAST_ADDRESS: 'https://aqua.example' })).toBeUndefined();
    const usual = { port: 3443, address: 'https://192.168.7.20:3443', isLocal: true };
    expect(front(true)).toEqual(usual);
    expect(front(false, { HOLDFAST_TLS: 'local' })).toEqual(usual);
    expect(frontOf(true, { NODE_ENV: 'test' }, { ...machine, addresses: [] })?.address).toBe('https://tankhouse:3443');
    expect(front(true, { HOLDFAST_ADDRESS: 'https://tankhouse.local:8443' })).toMatchObject({
      port: 8443,
      address: 'https://tankhouse.local:8443',
    });
    expect(front(true, { HOLDFAST_TLS_PORT: '443' })?.address).toBe('https://192.168.7.20');
  });

  test('by a certificate that was given, under the name it holds for', () => {
    expect(front(false, files)).toEqual({ port: 3443, address: 'https://localhost:3443', isLocal: false });
  });

  test.each([
    ['HOLDFAST_TLS_KEY', { HOLDFAST_TLS_CERT: '/a' }],
    ['cannot be read as a certificate', { HOLDFAST_TLS_CERT: '/nowhere', HOLDFAST_TLS_KEY: '/nowhere' }],
    ['begins with https://', { HOLDFAST_TLS: 'local', HOLDFAST_ADDRESS: 'http://aqua.example' }],
    ['HOLDFAST_TLS may be', { HOLDFAST_TLS: 'yes' }],
    ['HOLDFAST_TLS_PORT', { HOLDFAST_TLS: 'local', HOLDFAST_TLS_PORT: '0' }],
  ])('or not at all, and a sentence says why: %s', (said, environment) => {
    expect(() => front(false, environment)).toThrow(said);
  });
});

describe('the process that encrypts', () => {
  let pages: Server;
  const undo: (() => void)[] = [];
  beforeAll(async () => {
    pages = createServer((asked, response) => response.end(asked.headers['x-forwarded-proto']));
    pages.listen(0, '127.0.0.1');
    await once(pages, 'listening');
  });
  afterAll(() => {
    for (const step of undo) step();
    pages.close();
  });

  /** Started as `npm start` does. @returns its port */
  async function start(data: string, more: Record<string, string>): Promise<number> {
    const port = await freePort();
    const env = {
      ...process.env,
      HOLDFAST_DATA: data,
      HOLDFAST_ADDRESS: `https://localhost:${port}`,
      HOLDFAST_TLS_PORT: String(port),
      HOLDFAST_WEB_PORT: String((pages.address() as AddressInfo).port),
      ...more,
    };
    const nodeFlags = ['--conditions=react-server', '--import', 'tsx'];
    const log = join(folder, 'front.log');
    const child = spawnChild({ nodeFlags, args: [frontProgram()], env, cwd: ROOT, log });
    undo.push(() => void child.kill('SIGKILL'));
    await untilItAnswers(`http://localhost:${port}`, () => child.exitCode === null, log);
    return port;
  }

  /** Asked encrypted by whoever trusts an authority. */
  async function asked(port: number, ca: string): Promise<string> {
    const sent = request({ host: 'localhost', port, ca, agent: false, headers: { host: `localhost:${port}` } });
    sent.end();
    const [response] = await once(sent, 'response');
    return String((await once(response, 'data'))[0]);
  }

  test('makes its authority at the first start, answers by it, and is the same to phones after a kill', async () => {
    const data = join(folder, 'data');
    mkdirSync(data);
    const first = await start(data, {});
    const ca = readFileSync(join(data, 'tls/authority.crt'), 'utf8');
    expect(await asked(first, ca)).toBe('https');
    undo.pop()?.();
    expect(await asked(await start(data, {}), ca)).toBe('https');
    await expect(asked(await start(data, {}), CERTIFICATE)).rejects.toThrow();
    expect(existsSync(join(data, 'tls/server.json'))).toBe(true);
  });

  test('shows the certificate it was given, and keeps no authority of its own', async () => {
    const data = join(folder, 'other');
    mkdirSync(data);
    const port = await start(data, files);
    await vi.waitFor(async () => expect(await asked(port, CERTIFICATE)).toBe('https'));
    expect(existsSync(join(data, 'tls'))).toBe(false);
  });
});
