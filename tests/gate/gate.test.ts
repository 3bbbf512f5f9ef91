import { ok, refused } from '#core/result';
import { originOf } from '#server/gate/origin';
import { handle } from '#server/gate/handle';
import { may, type Verb } from '#server/gate/may';
import type { Refusal } from '#server/gate/refusal';
import { faultWords, refusalWords } from '#server/gate/refusal-words';
import { pass } from '#server/gate/use-case';
import { LOCAL_PERSON, type Who, whoAsks } from '#server/gate/who';
import { beforeAll, describe, expect, test } from 'vitest';
import { z } from 'zod';
import { freshDatabase } from '../_support/database';
import { anAccount, headersOf } from '../_support/signed-in';

freshDatabase();

const Shape = z.object({
  site: z.string(),
  times: z.coerce.number().int({ error: 'must be a whole number' }).default(1),
});
const echo = async (who: Who, input: z.output<typeof Shape>) => ok({ who: who.id, ...input });
const FOREIGN = [
  'evil.example',
  'localhost.evil.example',
  '127.0.0.1.evil.example:80',
  '10.0.0.2:3200',
  'localhost:3200:80',
  '',
];
const REFUSALS: Refusal[] = [
  { why: 'not-signed-in' },
  { why: 'not-allowed' },
  { why: 'wrong-sign-in' },
  { why: 'too-often', waitS: 90 },
  { why: 'too-often', waitS: null },
  { why: 'not-found', what: 'site' },
  { why: 'invalid', faults: [{ path: 'a', message: 'b' }] },
  { why: 'conflict', now: 'It was changed.' },
  { why: 'too-late' },
  { why: 'no-room' },
];

describe('who asks', () => {
  test.each(['localhost', 'localhost:3200', '127.0.0.1:3200', '[::1]:3200', 'LOCALHOST'])(
    'at %s is whoever signed in there, and nobody else',
    async (host) => {
      const id = await anAccount();
      const headers = await headersOf(id);
      headers.set('host', host);
      expect(await whoAsks(headers)).toMatchObject({ id });
      expect(await whoAsks(new Headers({ host }))).toBeNull();
    },
  );

  test.each(FOREIGN)('is nobody under the name "%s", even when that leads to this machine', async (host) => {
    const headers = await headersOf(await anAccount());
    headers.set('host', host);
    expect(await whoAsks(headers)).toBeNull();
  });

  test('is nobody when no name is given', async () => {
    expect(await whoAsks(new Headers())).toBeNull();
  });
});

describe('an origin of ours', () => {
  const at = (host: string, address?: string) => originOf(new Headers({ host }), address);

  test('is the address that was named, with its encryption, and the names of this machine', () => {
    expect(at('holdfast.example', 'https://holdfast.example')).toEqual({
      url: 'https://holdfast.example',
      host: 'holdfast.example',
      name: 'holdfast.example',
      isSecure: true,
      isLoopback: false,
    });
    expect(at('localhost:3200', 'https://holdfast.example')).toMatchObject({
      url: 'http://localhost:3200',
      isLoopback: true,
    });
  });

  test('is the one that the request was handed on for, as long as it was made to one of ours', () => {
    const address = 'https://holdfast.example';
    const handed = (host: string, forwarded: string) =>
      originOf(new Headers({ host, 'x-forwarded-host': forwarded }), address)?.url;
    expect(handed('127.0.0.1:3200', 'holdfast.example')).toBe('https://holdfast.example');
    expect(handed('127.0.0.1:3200', 'localhost:3200')).toBe('http://localhost:3200');
    expect(handed('127.0.0.1:3200', 'evil.example')).toBeUndefined();
    expect(handed('evil.example', 'holdfast.example')).toBeUndefined();
    expect(handed('evil.example', 'localhost:3200')).toBeUndefined();
  });

  test.each([...FOREIGN, 'holdfast.example:81'])('is not "%s"', (host) => {
    expect(at(host, 'https://holdfast.example')).toBeNull();
  });
});

describe('what a role may do at a site', () => {
  const cases: [Who['everywhere'], Verb[]][] = [
    [null, []],
    ['viewer', ['see']],
    ['aquarist', ['see']],
    ['lead', ['see']],
    ['manager', ['see', 'import']],
    ['admin', ['see', 'import']],
  ];
  test.each(cases)('%s: %j', (role, allowed) => {
    const verbs: Verb[] = ['see', 'import'];
    const everywhere: Who = { id: 'x', name: 'X', everywhere: role, at: {} };
    expect(verbs.filter((verb) => may(everywhere, verb, 'harbour'))).toEqual(allowed);
    const here: Who = { id: 'x', name: 'X', everywhere: null, at: role === null ? {} : { harbour: role } };
    expect(verbs.filter((verb) => may(here, verb, 'harbour'))).toEqual(allowed);
    expect(verbs.filter((verb) => may(here, verb, 'elsewhere'))).toEqual([]);
  });

  test('is told by the site itself where it has a word of its own, and not by names that every object has', () => {
    const who: Who = { id: 'x', name: 'X', everywhere: 'admin', at: { harbour: 'viewer' } };
    expect(may(who, 'import', 'harbour')).toBe(false);
    expect(may({ ...who, everywhere: null }, 'see', 'constructor')).toBe(false);
  });
});

describe('the gate', () => {
  test('lets nobody through who is not known, before it looks at what they sent', async () => {
    expect(await pass(Shape, echo, null, 'nonsense')).toEqual({ ok: false, reason: { why: 'not-signed-in' } });
  });

  test('names each fault of the input by its field, and does nothing', async () => {
    const never = async () => {
      throw new Error('was asked');
    };
    const answer = await pass(Shape, never, LOCAL_PERSON, { times: 1.5 });
    expect(answer).toMatchObject({
      ok: false,
      reason: { why: 'invalid', faults: [{ path: 'site' }, { path: 'times', message: 'must be a whole number' }] },
    });
  });

  test('gives the use case the person and parsed input', async () => {
    expect(await pass(Shape, echo, LOCAL_PERSON, { site: 'a', times: '3', more: 1 })).toEqual(
      ok({ who: 'local', site: 'a', times: 3 }),
    );
  });
});

describe('a handler', () => {
  let cookie = '';
  let id = '';
  beforeAll(async () => {
    id = await anAccount();
    cookie = (await headersOf(id)).get('cookie') ?? '';
  });
  const request = (path: string, host = 'localhost:3200') =>
    new Request(`http://localhost:3200${path}`, { headers: { host, cookie } });
  const place = (params: Record<string, string>) => ({ params: Promise.resolve(params) });

  test('reads the address and what stands behind the question mark, the address first', async () => {
    const response = await handle(Shape, echo)(request('/api/x/a?times=2&site=b'), place({ site: 'a' }));
    expect(response.status).toBe(200);
    expect(await response.json()).toEqual({ who: id, site: 'a', times: 2 });
  });

  test.each(
    REFUSALS.map((reason, at) => [reason.why, reason, [401, 403, 401, 429, 429, 404, 422, 409, 410, 507][at]] as const),
  )('answers %s with its status and a sentence', async (_why, reason, status) => {
    const response = await handle(Shape, async () => refused(reason))(request('/api/x/a'), place({ site: 'a' }));
    expect(response.status).toBe(status);
    expect(await response.json()).toEqual({ refusal: reason, said: refusalWords(reason) });
  });

  test('knows nobody who came by another name', async () => {
    const response = await handle(Shape, echo)(request('/api/x/a', 'evil.example'), place({ site: 'a' }));
    expect(response.status).toBe(401);
  });
});

test('every refusal has a sentence of its own', () => {
  const said = REFUSALS.map(refusalWords);
  expect(new Set(said).size).toBe(REFUSALS.length);
  for (const sentence of said) expect(sentence).toMatch(/^[A-Z].*\.$/);
});

test('a fault is said with its place, if it has one', () => {
  expect(faultWords({ path: 'rooms[0]', message: 'must be', line: 3, column: 2 })).toBe(
    'line 3, column 2: rooms[0]: must be',
  );
  expect(faultWords({ path: '', message: 'is empty' })).toBe('is empty');
});
