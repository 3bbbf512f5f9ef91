import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { readingsAnswer, readingsRefusal } from '#shape/readings/answer';
import { facility } from '../../_support/build-facility';
import { system } from '../../_support/build-system';
import { freshDatabase } from '../../_support/database';
import { aSource, post } from '../../_support/sources';
import { keep, stored } from '../../_support/stored';

const { query } = freshDatabase();
let siteId = '';

beforeAll(async () => {
  await keep(facility());
  ({ siteId } = await stored('harbour'));
});

const LABELS = [
  'n',
  'bn',
  'u',
  'bu',
  'v',
  'bv',
  'vb',
  'vs',
  'vd',
  's',
  'bs',
  't',
  'bt',
  'ut',
  'bver',
  'x',
  'x_',
  '__proto__',
];
const numbers = fc.oneof(
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.constantFrom(0, -0, 85, -127, 5e-324, 1.7e308, 2 ** 28, 1.7e9, 253402300800, 8.64e12, 10),
);
const values = fc.oneof(
  numbers,
  fc.string({ unit: 'binary' }),
  fc.boolean(),
  fc.constant(null),
  fc.constantFrom(`${system().key}/display-temperature`, `${system().key}/`, 'floor', 'Cel', 'degF', '%'),
  fc.array(fc.integer()),
);
const records = fc.dictionary(fc.constantFrom(...LABELS), values, { maxKeys: 6 });
const names = fc
  .constantFrom('display-temperature', 'floor', 'sump-level', 'none')
  .map((key) => `${system().key}/${key}`);
const likely = fc.record(
  { n: names, v: numbers, t: numbers, bt: numbers, u: fc.constantFrom('Cel', 'mm', 'm', '1', 'degF') },
  { requiredKeys: ['n', 'v'] },
);
const packs = fc.array(fc.oneof(records, likely), { maxLength: 12 }).map((pack) => JSON.stringify(pack));
/** Well-formed until something was cut out of it, doubled or written otherwise. */
const broken = fc
  .tuple(
    packs,
    fc.nat(200),
    fc.constantFrom('', '1e999', 'NaN', '"', '[', '{', '\\ud800', '\u0000', '1e-999', '{"v":1,"v":2}'),
  )
  .map(([pack, at, piece]) => `${pack.slice(0, at)}${piece}${pack.slice(at)}`);
const cells = fc.oneof(
  fc.string(),
  fc.constantFrom('2026-05-01T08:00:00Z', `${system().key}/floor`, '1', '-1e400', '"', 'wet'),
);
const tables = fc
  .array(fc.array(cells, { maxLength: 5 }), { maxLength: 8 })
  .map((rows) => ['name,time,value,unit', ...rows.map((row) => row.join(','))].join('\n'));

async function isClear(body: string, type: string, query_: string): Promise<void> {
  // A source of its own now and then: one may not send so often.
  const answer = await post(await tokenOf(), body, { type, query: query_ });
  expect([200, 400]).toContain(answer.status);
  const told: unknown = await answer.json();
  if (answer.status === 400) {
    expect(readingsRefusal.strict().parse(told).said.length).toBeLessThan(300);
    return;
  }
  const { records: each, late, ...counts } = readingsAnswer.parse(told);
  expect(late).toBe(each.filter((one) => 'late' in one).length);
  expect(Object.values(counts).reduce((sum, count) => sum + count, 0)).toBe(each.length);
}

let used = 0;
let token = '';
async function tokenOf(): Promise<string> {
  if (used++ % 1000 === 0) ({ token } = await aSource(siteId, `Any ${used}`));
  return token;
}

describe('whatever a body holds', () => {
  const queries = fc.constantFrom('', '?correct=1', '?correct=x');

  test('as SenML, it is answered clearly and breaks nothing', async () => {
    await fc.assert(
      fc.asyncProperty(fc.oneof(packs, broken, fc.string({ unit: 'binary' })), queries, (body, correct) =>
        isClear(body, 'application/senml+json', correct),
      ),
      { numRuns: 600 },
    );
  });

  test('as CSV, it is answered clearly and breaks nothing', async () => {
    await fc.assert(
      fc.asyncProperty(fc.oneof(tables, fc.string({ unit: 'binary' })), queries, (body, correct) =>
        isClear(body, 'text/csv', correct),
      ),
      { numRuns: 400 },
    );
  });

  test('what was stored of it are finite numbers of times that can be', async () => {
    const { rows } =
      await query(`SELECT count(*)::int AS n, min("at") >= '1990-01-01' AND max("at") < now() + interval '1 hour' AS fits
                                    FROM reading`);
    expect(rows[0].n).toBeGreaterThan(0);
    expect(rows[0].fits).toBe(true);
  });
});
