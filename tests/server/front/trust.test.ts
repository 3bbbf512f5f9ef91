import { X509Certificate } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import sharp from 'sharp';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import { localPair } from '#server/front/local-authority';
import { machineNames } from '#server/front/machine-names';
import { getTrust } from '#server/trust/get-trust';
import { handOut } from '#server/trust/hand-out';
import { mobileConfig } from '#server/trust/mobile-config';
import { QrCode } from '#ui/marks/qr-code';
import type { Visit } from '#server/gate/visit';
import { temporaryFolder } from '../../_support/temporary-folder';

const ADDRESS = 'https://192.168.7.20:3443';
const data = temporaryFolder();
/** Asked for by nobody in particular: what is told is the same for all. */
const visit = {} as Visit;
vi.stubEnv('DATABASE_URL', 'postgres://nowhere.example/none');
vi.stubEnv('HOLDFAST_ADDRESS', ADDRESS);
vi.stubEnv('HOLDFAST_DATA', data);
vi.stubEnv('HOLDFAST_TLS', 'local');
let authority: X509Certificate;

beforeAll(async () => {
  const names = machineNames(ADDRESS, { hostname: 'tankhouse', addresses: ['192.168.7.20'] });
  await localPair(join(data, 'tls'), names, new Date());
  authority = new X509Certificate(readFileSync(join(data, 'tls/authority.crt')));
});

describe('whom to trust', () => {
  test('is told with the fingerprints that devices show, and where to read it unencrypted', async () => {
    const told = await getTrust(visit);
    expect(told).toMatchObject({
      ok: true,
      value: { address: ADDRESS, door: 'http://192.168.7.20:3443/trust' },
    });
    expect(told.ok && told.value.authority).toMatchObject({
      // As a phone lists it: a name with a comma is not written as in a distinguished name.
      title: expect.stringMatching(/^Holdfast on [^\\,]+, \d{4}-\d{2}-\d{2}$/),
      fingerprint: authority.fingerprint256,
      shortFingerprint: authority.fingerprint,
    });
  });

  test('is handed out as the certificate alone', async () => {
    const certificate = await handOut(visit, { file: 'holdfast.crt' });
    expect(certificate.ok && new X509Certificate(certificate.value.content).fingerprint256).toBe(
      authority.fingerprint256,
    );
    const { key } = JSON.parse(readFileSync(join(data, 'tls/authority.json'), 'utf8'));
    for (const file of ['holdfast.crt', 'holdfast.mobileconfig'] as const) {
      const out = await handOut(visit, { file });
      const text = out.ok ? Buffer.from(out.value.content).toString('latin1') : '';
      expect(text).not.toBe('');
      for (const line of String(key).split('\n').slice(1, -2)) expect(text).not.toContain(line);
      expect(text).not.toContain('PRIVATE');
    }
  });

  test('comes to a phone as a profile of one payload, the same each time', () => {
    const profile = mobileConfig(authority);
    expect(mobileConfig(authority)).toBe(profile);
    const [, inside = ''] = /<data>([^<]+)<\/data>/.exec(profile) ?? [];
    expect(new X509Certificate(Buffer.from(inside, 'base64')).fingerprint256).toBe(authority.fingerprint256);
    expect(profile.match(/com\.apple\.security\.root/g)).toHaveLength(1);
    const ids = [...profile.matchAll(/<key>PayloadUUID<\/key><string>([^<]+)</g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(2);
    for (const id of ids) expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
    // Whatever is opened is closed, in order (XML 1.0, 2.1).
    const open: string[] = [];
    for (const [, end, name = '', single] of profile.matchAll(/<(\/?)([a-z]+)[^>]*?(\/?)>/g))
      if (single === '') end === '/' ? expect(open.pop()).toBe(name) : open.push(name);
    expect(open).toEqual([]);
  });
});

test('the code on the page is read by a reader of another make', async () => {
  const wasm = join(
    dirname(createRequire(import.meta.url).resolve('zxing-wasm/reader')),
    '../../reader/zxing_reader.wasm',
  );
  const bytes = readFileSync(wasm);
  prepareZXingModule({
    overrides: { wasmBinary: bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length) },
  });
  for (const text of ['http://192.168.7.20:3443/trust', `https://tankhouse.local/${'x'.repeat(200)}`]) {
    const svg = renderToStaticMarkup(createElement(QrCode, { text, said: 'code' }));
    const drawn = svg.replace('<svg ', '<svg xmlns="http://www.w3.org/2000/svg" width="400" height="400" ');
    const read = await readBarcodes(await sharp(Buffer.from(drawn)).png().toBuffer(), { formats: ['QRCode'] });
    expect(read.map((code) => code.text)).toEqual([text]);
  }
});
