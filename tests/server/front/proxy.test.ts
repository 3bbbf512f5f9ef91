import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { issueServer, makeAuthority } from '#server/front/issue';
import { freePort } from '../../../app/_start/postgres/port.mjs';
import { temporaryFolder } from '../../_support/temporary-folder';
import { startPages } from './pages';
import { askFor, textOf, toldOf, type Visitor } from './visitor';

// The configuration that README tells, run by the program it is for.
const NAME = 'aquarium.example';
vi.stubEnv('HOLDFAST_ADDRESS', `https://${NAME}`);
vi.stubEnv('DATABASE_URL', 'postgres://nowhere.example/none');

const NGINX = '/usr/sbin/nginx';
const folder = temporaryFolder();
let pages: Awaited<ReturnType<typeof startPages>>;
let visitor: Visitor;
let nginx: ChildProcess | undefined;

function isThere(): boolean {
  try {
    execFileSync(NGINX, ['-v'], { stdio: 'ignore' });
    return true;
  } catch {
    console.warn('nginx is not installed, so the proxy that README tells was not tried: apt-get install nginx-light');
    return false;
  }
}

/** What README tells, with the places of this test in it. */
function told(port: number, inside: number): string {
  const readme = readFileSync(new URL('../../../README.md', import.meta.url), 'utf8');
  const [, server = ''] = /```nginx\n([\s\S]*?)```/.exec(readme) ?? [];
  const places: [string, string][] = [
    ['listen 443 ssl', `listen 127.0.0.1:${port} ssl`],
    ['http://127.0.0.1:3200', `http://127.0.0.1:${inside}`],
    ['/etc/ssl/aquarium.crt', join(folder, 'a.crt')],
    ['/etc/ssl/aquarium.key', join(folder, 'a.key')],
  ];
  return places.reduce((text, [said, here]) => {
    expect(text, said).toContain(said);
    return text.replace(said, here);
  }, server);
}

describe.runIf(isThere())('behind a proxy as README tells it', () => {
  beforeAll(async () => {
    pages = await startPages();
    const port = await freePort();
    const root = await makeAuthority([NAME], 'Test', new Date());
    const pair = await issueServer(root, { names: [NAME], addresses: [] }, new Date());
    writeFileSync(join(folder, 'a.crt'), pair.certificate);
    writeFileSync(join(folder, 'a.key'), pair.key);
    const temporary = ['client_body', 'proxy', 'fastcgi', 'uwsgi', 'scgi'].map(
      (of) => `${of}_temp_path ${folder}/${of};`,
    );
    const http = ['access_log off;', ...temporary, told(port, pages.port)].join('\n');
    // Started by root it would work as somebody else, who may not write here.
    const user = process.getuid?.() === 0 ? ['user root;'] : [];
    const lines = [
      ...user,
      'daemon off;',
      `pid ${folder}/pid;`,
      'error_log stderr;',
      'events {}',
      `http {\n${http}\n}`,
    ];
    writeFileSync(join(folder, 'nginx.conf'), lines.join('\n'));
    nginx = spawn(NGINX, ['-c', join(folder, 'nginx.conf'), '-p', folder, '-e', 'stderr'], { stdio: 'inherit' });
    visitor = { port, ca: root.certificate, host: NAME };
    await vi.waitFor(() => toldOf(visitor), { timeout: 10_000, interval: 50 });
  });
  afterAll(async () => {
    pages.server.closeAllConnections();
    pages.server.close();
    if (!nginx) return;
    nginx.kill('SIGTERM');
    await once(nginx, 'exit');
  });

  test('a throttle counts for whoever really asks, whatever they say of themselves', async () => {
    const forged = { 'x-forwarded-for': '192.0.2.1', 'x-real-ip': '192.0.2.1' };
    expect((await toldOf(visitor, { headers: forged })).visit?.address).toBe('127.0.0.1');
  });

  test('cookies are for https alone, and browsers promise to come by it', async () => {
    expect((await toldOf(visitor)).visit).toMatchObject({ isSecure: true, cookie: '__Host-holdfast-session' });
    expect((await askFor(visitor)).headers['strict-transport-security']).toContain('max-age=');
  });

  test('a form of our own page is taken, one of another page is not, and the file of a logger gets through', async () => {
    const headers = { origin: `https://${NAME}` };
    const body = 'a'.repeat(5_000_000);
    expect((await toldOf(visitor, { method: 'POST', headers, body })).body.length).toBe(body.length);
    const elsewhere = await askFor(visitor, { method: 'POST', headers: { origin: 'https://evil.example' }, body: 'a' });
    expect(elsewhere.statusCode).toBe(403);
  });

  test('a foreign name is turned away', async () => {
    const answer = await askFor(visitor, { headers: { host: 'evil.example', 'x-forwarded-host': NAME } });
    expect(answer.statusCode).toBe(421);
    expect(await textOf(answer)).not.toContain('visit');
  });

  test('a page that watches is told at once what is new', async () => {
    const live = await askFor(visitor, { path: '/live' });
    expect(String((await once(live, 'data'))[0])).toBe('data: first\n\n');
    const next = once(live, 'data');
    pages.tell();
    expect(String((await next)[0])).toBe('data: next\n\n');
    live.destroy();
    await vi.waitFor(() => expect(pages.watching()).toBe(0), { timeout: 5000 });
  });
});
