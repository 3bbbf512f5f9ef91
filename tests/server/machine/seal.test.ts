import { beforeEach, describe, expect, test, vi } from 'vitest';
import { statSync } from 'node:fs';
import { join } from 'node:path';
import { seal, unseal } from '#server/machine/seal';
import { keptSecret } from '../../../app/_start/kept-secret.mjs';
import { temporaryFolder } from '../../_support/temporary-folder';

const SECRET = 'a secret of this test, long enough for it';
const PASSWORD = 'water under the bridge';

const data = temporaryFolder();

beforeEach(() => {
  vi.stubEnv('HOLDFAST_SECRET', SECRET);
});

describe('what is sealed', () => {
  test('is read with the same secret and for the same thing, and otherwise not', () => {
    const sealed = seal(PASSWORD, 'a');
    if (!sealed.ok) throw new Error(sealed.reason);
    expect(unseal(sealed.value, 'a')).toEqual({ ok: true, value: PASSWORD });
    expect(unseal(sealed.value, 'b')).toEqual({ ok: false, reason: 'other-secret' });
    const bent = sealed.value.map((byte, i) => (i === sealed.value.length - 1 ? byte ^ 1 : byte));
    for (const bytes of [bent, sealed.value.slice(0, 20), new Uint8Array()])
      expect(unseal(bytes, 'a')).toEqual({ ok: false, reason: 'other-secret' });
    vi.stubEnv('HOLDFAST_SECRET', SECRET.toUpperCase());
    expect(unseal(sealed.value, 'a')).toEqual({ ok: false, reason: 'other-secret' });
  });
});

test('the secret that nobody gave is made once, is the same from then on, and is its owner’s alone', () => {
  const folder = join(data, 'new');
  const secret = keptSecret(folder);
  expect(secret).toHaveLength(43);
  expect(keptSecret(folder)).toBe(secret);
  expect(statSync(join(folder, 'secret')).mode & 0o777).toBe(0o600);
  expect(keptSecret(join(data, 'other'))).not.toBe(secret);
});
