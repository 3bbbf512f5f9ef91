import { beforeEach, expect, test, vi } from 'vitest';
import { chooseView } from '../../app/(house)/view/actions';

/** What the browser sent with the form, and what it is told to keep. */
const seen = vi.hoisted(() => ({ host: '', kept: [] as { name: string; secure: boolean }[] }));

vi.mock('next/headers', () => ({
  headers: async () => new Headers({ host: seen.host }),
  cookies: async () => ({
    set: (name: string, _value: string, { secure }: { secure: boolean }) => seen.kept.push({ name, secure }),
  }),
}));

beforeEach(() => {
  seen.kept.length = 0;
  vi.stubEnv('HOLDFAST_ADDRESS', 'https://aquarium.example');
  vi.stubEnv('DATABASE_URL', 'postgresql://nobody@127.0.0.1:1/none');
});

// Source: OWASP ASVS 5.0, 3.3.1.
test.each([
  ['aquarium.example', true],
  ['localhost:3200', false],
])('the choice of units and light, made at %s, is kept by a cookie that is secure: %s', async (host, secure) => {
  seen.host = host;
  const form = new FormData();
  form.set('units', 'us');
  form.set('light', 'dark');
  await chooseView(form);
  expect(seen.kept).toEqual([
    { name: 'holdfast-units', secure },
    { name: 'holdfast-light', secure },
  ]);
});
