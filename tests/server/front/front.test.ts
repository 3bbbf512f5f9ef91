import { once } from 'node:events';
import { X509Certificate } from 'node:crypto';
import type { AddressInfo } from 'node:net';
import { connect as connectPlainly } from 'node:net';
import { connect } from 'node:tls';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { issueServer, makeAuthority } from '#server/front/issue';
import { openFront } from '#server/front/open-front';
import { withinRanges } from '#server/front/private-ranges';
import { startPages } from './pages';
import { askFor, talk, textOf, toldOf, type Visitor } from './visitor';

const OWN = 'https://tankhouse.local:3443';
const NAMES = { names: ['tankhouse.local', 'localhost'], addresses: ['127.0.0.1'] };
vi.stubEnv('HOLDFAST_ADDRESS', OWN);
vi.stubEnv('HOLDFAST_HSTS', 'off');
// Read with the rest and never asked.
vi.stubEnv('DATABASE_URL', 'postgres://nowhere.example/none');

let pages: Awaited<ReturnType<typeof startPages>>;
let visitor: Visitor;
let front: ReturnType<typeof openFront>;
let another: Awaited<ReturnType<typeof issueServer>>;
let proxies: readonly string[] = [];

beforeAll(async () => {
  pages = await startPages();
  const root = await makeAuthority(NAMES.names, 'Holdfast on tankhouse', new Date());
  const called = { own: new URL(OWN), others: new Set([...NAMES.names, ...NAMES.addresses]), isTrustTold: true };
  const isProxy = (address: string) => withinRanges(proxies)(address);
  front = openFront({ inside: { port: pages.port }, called, isProxy }, await issueServer(root, NAMES, new Date()));
  another = await issueServer(root, NAMES, new Date());
  front.server.listen(0);
  await once(front.server, 'listening');
  const { port } = front.server.address() as AddressInfo;
  visitor = { port, ca: root.certificate, host: 'tankhouse.local:3443' };
});
afterAll(() => {
  front.server.close();
  pages.server.close();
  pages.server.closeAllConnections();
});

describe('what comes encrypted', () => {
  test('reaches the pages, which know who asks, that it came by https, and where they are', async () => {
    const told = await toldOf(visitor, { path: '/a?b=c', method: 'POST', headers: { origin: OWN }, body: 'typed' });
    expect(told).toMatchObject({
      path: '/a?b=c',
      body: 'typed',
      visit: { address: '127.0.0.1', isSecure: true, cookie: '__Host-holdfast-session' },
      headers: { host: 'tankhouse.local:3443', 'x-forwarded-proto': 'https' },
    });
    const answer = await askFor(visitor);
    expect(answer.headers['set-cookie']).toEqual(['a=1; Path=/', 'b=2; Path=/']);
    // Who ceases to trust this machine's own authority must not be kept out for two years.
    expect(answer.headers['strict-transport-security']).toBeUndefined();
    expect(answer.headers['content-security-policy']).toContain('upgrade-insecure-requests');
  });

  test('says nothing of others that anybody would believe', async () => {
    const headers = {
      'x-forwarded-for': '198.51.100.7, 192.0.2.1',
      'x-forwarded-host': 'localhost',
      forwarded: 'for=192.0.2.1',
      'x-real-ip': '192.0.2.1',
      'x-holdfast-path': '/elsewhere',
    };
    const told = await toldOf(visitor, { headers });
    expect(told.visit?.address).toBe('127.0.0.1');
    expect(told.headers['x-forwarded-host']).toBe('tankhouse.local:3443');

    for (const name of ['forwarded', 'x-real-ip', 'x-holdfast-path']) expect(told.headers[name], name).toBeUndefined();
  });

  test('of a named proxy is of whom it speaks for, which it adds last', async () => {
    proxies = ['127.0.0.1'];
    const headers = { 'x-forwarded-for': 'forged, 198.51.100.7', 'x-forwarded-host': 'tankhouse.local:3443' };
    expect((await toldOf(visitor, { headers })).visit?.address).toBe('198.51.100.7');
    proxies = [];
  });

  test('by another name of this machine is led to its own, and by a foreign one turned away', async () => {
    const led = await askFor({ ...visitor, host: 'localhost:3443' }, { path: '/rounds?x=1' });
    expect([led.statusCode, led.headers.location]).toEqual([307, `${OWN}/rounds?x=1`]);
    const sent = await askFor({ ...visitor, host: 'localhost:3443' }, { method: 'POST', body: 'a' });
    expect(sent.statusCode).toBe(421);
    const foreign = await askFor(visitor, { headers: { host: 'evil.example' } });
    expect(foreign.statusCode).toBe(421);
  });

  test('is told news as they come, and the pages hear when nobody listens any more', async () => {
    const live = await askFor(visitor, { path: '/live' });
    const [first] = await once(live, 'data');
    expect(String(first)).toBe('data: first\n\n');
    const next = once(live, 'data');
    pages.tell();
    expect(String((await next)[0])).toBe('data: next\n\n');
    live.destroy();
    await vi.waitFor(() => expect(pages.watching()).toBe(0));
  });

  test('may go on to speak something else', async () => {
    const heard = await talk(visitor, 'ping');
    expect(heard).toMatch(/^HTTP\/1.1 101/);
    expect(heard).toMatch(/for 127\.0\.0\.1;ping$/);
  });

  test('is shown a renewed certificate without a restart', async () => {
    const serial = async () => {
      const socket = connect({ port: visitor.port, host: '127.0.0.1', ca: visitor.ca, servername: 'localhost' });
      await once(socket, 'secureConnect');
      const { serialNumber } = socket.getPeerCertificate();
      socket.destroy();
      return serialNumber;
    };
    const before = await serial();
    front.show(another);
    expect(await serial()).toBe(new X509Certificate(another.certificate).serialNumber);
    expect(await serial()).not.toBe(before);
  });
});

describe('what comes in the clear', () => {
  const plainly = (path: string, more = {}) => askFor(visitor, { path, isPlain: true, ...more });

  test('is shown how to trust this machine, without cookies in either direction, and nothing else', async () => {
    const page = await plainly('/trust', { headers: { cookie: 'holdfast-session=x', authorization: 'Bearer y' } });
    const { headers } = JSON.parse(await textOf(page));
    expect([headers.cookie, headers.authorization]).toEqual([undefined, undefined]);
    expect(page.headers['set-cookie']).toBeUndefined();
    expect(page.headers['content-security-policy']).toContain("default-src 'self'");
    // Its styles could not be loaded otherwise: nobody trusts this machine yet.
    expect(page.headers['content-security-policy']).not.toContain('upgrade-insecure-requests');
    expect((await plainly('/')).headers.location).toBe('/trust');
    for (const path of ['/sign-in', '/api/readings', '/trusted', '/trust/../sign-in', '/api/health'])
      expect((await plainly(path)).headers.location, path).toBe(OWN + path);
  });

  test('and would change something is refused', async () => {
    expect((await plainly('/trust', { method: 'POST', body: 'password=x' })).statusCode).toBe(403);
    expect((await plainly('/trust', { headers: { host: 'evil.example' } })).statusCode).toBe(421);
  });

  test('without a meaning, or never to the end, harms nobody', async () => {
    const socket = connectPlainly(visitor.port, '127.0.0.1');
    socket.on('error', () => undefined);
    socket.write(Buffer.from([22, 3, 1, 0, 5, 9, 9]));
    socket.end();
    await once(socket, 'close');
    expect((await askFor(visitor)).statusCode).toBe(200);
  });
});

test('while the pages are away, whoever asks is told to come again', async () => {
  const called = { own: new URL(OWN), others: new Set<string>(), isTrustTold: true };
  const alone = openFront({ inside: { port: 1 }, called, isProxy: () => false }, another);
  alone.server.listen(0);
  await once(alone.server, 'listening');
  const { port } = alone.server.address() as AddressInfo;
  const answer = await askFor({ ...visitor, port });
  expect([answer.statusCode, answer.headers['retry-after']]).toEqual([502, '3']);
  alone.server.close();
});
