import { describe, expect, test } from 'vitest';
import { contentPolicy, isPrivate, safeHeaders } from '#server/web/safe-headers';

/** The directives of a policy by name, as a browser reads them (Content Security Policy Level 3, 2.2.1). */
function directives(policy: string): Map<string, string[]> {
  const parts = policy.split(';').map((part) => part.trim().split(/\s+/));
  return new Map(parts.map(([name = '', ...values]) => [name, values]));
}

// OWASP ASVS 5.0, 3.4.3 and 3.4.6.
describe('the content policy', () => {
  test('runs only scripts that bear the word of this answer, and lets no page frame ours', () => {
    const read = directives(contentPolicy('abc', false));
    expect(read.get('script-src')).toEqual(["'self'", "'nonce-abc'", "'strict-dynamic'"]);
    expect(read.get('object-src')).toEqual(["'none'"]);
    expect(read.get('base-uri')).toEqual(["'none'"]);
    expect(read.get('frame-ancestors')).toEqual(["'none'"]);
    expect(read.get('default-src')).toEqual(["'self'"]);
    expect([...read.values()].flat().filter((value) => value.startsWith("'unsafe"))).toEqual([]);
  });

  test('lets WebAssembly run on the one page that reads labels, and the camera be asked for there', () => {
    expect(directives(contentPolicy('a', false)).get('script-src')).not.toContain("'wasm-unsafe-eval'");
    expect(directives(contentPolicy('a', false, [], true)).get('script-src')).toContain("'wasm-unsafe-eval'");
    expect(safeHeaders(false, { camera: true })['permissions-policy']).toContain('camera=(self)');
  });

  test('asks for https only where people come by https', () => {
    expect(directives(contentPolicy('abc', false)).has('upgrade-insecure-requests')).toBe(false);
    expect(directives(contentPolicy('abc', true)).has('upgrade-insecure-requests')).toBe(true);
  });

  test('lets a form lead to whoever else signs people in, and nowhere else', () => {
    expect(directives(contentPolicy('a', false)).get('form-action')).toEqual(["'self'"]);
    expect(directives(contentPolicy('a', false, ['https://id.example'])).get('form-action')).toEqual([
      "'self'",
      'https://id.example',
    ]);
  });
});

describe('the other headers', () => {
  // OWASP ASVS 5.0, 3.4.1: at least a year, with what lies below the name; 3.4.4 and 3.4.5.
  test('promise https for more than a year, and only where people come by https', () => {
    expect(safeHeaders(false)['strict-transport-security']).toBeUndefined();
    const promised = safeHeaders(true)['strict-transport-security'] ?? '';
    expect(Number(/max-age=(\d+)/.exec(promised)?.[1])).toBeGreaterThan(31_536_000);
    expect(promised).toContain('includeSubDomains');
    // An authority of a machine's own may cease to be trusted.
    expect(safeHeaders(true, { isPromised: false })['strict-transport-security']).toBeUndefined();
  });

  test('keep types, addresses, devices and windows to ourselves', () => {
    expect(safeHeaders(false)).toMatchObject({
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'same-origin',
      'cross-origin-opener-policy': 'same-origin',
    });
    expect(safeHeaders(false)['permissions-policy']).toContain('camera=()');
  });
});

test('what the build made and the published schema may be kept, and nothing else', () => {
  for (const path of ['/_next/static/chunks/a.js', '/schema/facility.json', '/icon.svg'])
    expect(isPrivate(path)).toBe(false);
  for (const path of ['/', '/sites/harbour', '/api/facility/harbour', '/how', '/x/_next/static/a', '/icon.svg/x'])
    expect(isPrivate(path)).toBe(true);
});
