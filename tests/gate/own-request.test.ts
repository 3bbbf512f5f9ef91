import { describe, expect, test } from 'vitest';
import { strayOf } from '#server/web/own-request';

const AQUA = 'https://aqua.example';
/** What `npm start` says where nothing else was said: the machine alone. */
const HERE = 'http://localhost:3200';
const sent = (method: string, headers: Record<string, string>) => ({ method, headers: new Headers(headers) });

describe('the name a request calls', () => {
  test.each(['localhost', 'localhost:3200', '127.0.0.1:3200', '[::1]:3200', 'LOCALHOST:3200'])(
    '%s is ours: the machine by its own name',
    (host) => {
      expect(strayOf(sent('GET', { host }), HERE)).toBeNull();
      expect(strayOf(sent('GET', { host }), AQUA)).toBeNull();
    },
  );

  // Names that lead to this machine because somebody else says so (DNS rebinding).
  test.each(['evil.example', 'localhost.evil.example', '127.0.0.1.evil.example:80', '10.0.0.2:3200', 'a:1:2', ''])(
    '"%s" is foreign',
    (host) => {
      expect(strayOf(sent('GET', { host }), HERE)).toBe('foreign-name');
      expect(strayOf(sent('POST', { host, origin: `http://${host}` }), AQUA)).toBe('foreign-name');
    },
  );

  test('the address people are told is ours, with its port, and only when it is told', () => {
    expect(strayOf(sent('GET', { host: 'aqua.example' }), AQUA)).toBeNull();
    expect(strayOf(sent('GET', { host: 'Aqua.Example' }), AQUA)).toBeNull();
    expect(strayOf(sent('GET', { host: 'aqua.example:8443' }), AQUA)).toBe('foreign-name');
    expect(strayOf(sent('GET', { host: 'aqua.example' }), HERE)).toBe('foreign-name');
  });

  test('no name at all is foreign', () => {
    expect(strayOf(sent('GET', {}), HERE)).toBe('foreign-name');
  });
});

// OWASP Cross-Site Request Forgery Prevention Cheat Sheet: refuse unsafe methods from elsewhere, by Origin, and by
// Sec-Fetch-Site where a browser sends no Origin.
describe('a request that would change something', () => {
  const host = 'localhost:3200';

  test.each(['POST', 'PUT', 'PATCH', 'DELETE', 'post', 'MKCOL'])('%s is held to a page of ours', (method) => {
    expect(strayOf(sent(method, { host, origin: 'http://localhost:3200' }), HERE)).toBeNull();
    expect(strayOf(sent(method, { host, origin: 'https://evil.example' }), HERE)).toBe('foreign-page');
  });

  test.each([
    'null',
    'http://localhost',
    'http://localhost:3201',
    'https://localhost:3200',
    'http://127.0.0.1:3200',
    'http://localhost:3200.evil.example',
    'http://evil.example/http://localhost:3200',
  ])('from the origin "%s" is turned away', (origin) => {
    expect(strayOf(sent('POST', { host, origin, 'sec-fetch-site': 'same-origin' }), HERE)).toBe('foreign-page');
  });

  test.each([
    ['same-origin', null],
    ['same-site', 'foreign-page'],
    ['cross-site', 'foreign-page'],
    ['none', 'foreign-page'],
  ])('without an origin, sent as %s: %s', (site, expected) => {
    expect(strayOf(sent('POST', { host, 'sec-fetch-site': site }), HERE)).toBe(expected);
  });

  test('that tells nothing of where it comes from is turned away', () => {
    expect(strayOf(sent('POST', { host }), HERE)).toBe('foreign-page');
  });

  test('at the address people are told comes from its pages alone', () => {
    const at = (origin: string) => strayOf(sent('POST', { host: 'aqua.example', origin }), AQUA);
    expect(at('https://aqua.example')).toBeNull();
    expect(at('http://aqua.example')).toBe('foreign-page');
    expect(at('https://aqua.example:8443')).toBe('foreign-page');
    expect(at('https://sub.aqua.example')).toBe('foreign-page');
  });

  // Otherwise the cookie would come without its marks of https.
  test('through a machine in front is held to the name that people see, which is to be handed on', () => {
    expect(strayOf(sent('POST', { host, origin: 'https://aqua.example' }), AQUA)).toBe('foreign-page');
  });
});

describe('what a device sends', () => {
  const at = (path: string, host: string) =>
    strayOf(sent('POST', { host, origin: 'https://evil.example' }), AQUA, path);

  test('comes from no page, and is let in by its token further on', () => {
    expect(at('/api/readings', 'aqua.example')).toBeNull();
    expect(strayOf(sent('POST', { host: 'localhost:3200' }), HERE, '/api/readings')).toBeNull();
  });

  test('has to call us by our name, and no other path is let off', () => {
    expect(at('/api/readings', 'evil.example')).toBe('foreign-name');
    for (const path of ['/api/readings/', '/api/readings/x', '/api', '/', '/API/readings'])
      expect(at(path, 'aqua.example')).toBe('foreign-page');
  });
});

test('a request that changes nothing may come from anywhere', () => {
  for (const method of ['GET', 'HEAD', 'OPTIONS'])
    expect(strayOf(sent(method, { host: 'localhost', origin: 'https://evil.example' }), HERE)).toBeNull();
});
