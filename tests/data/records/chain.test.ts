import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { beforeEach, describe, expect, test } from 'vitest';
import { canonicalText } from '#data/canonical';
import { database } from '#data/client';
import { newId } from '#data/new-id';
import { appendRecords } from '#data/records/append-records';
import { verifyChain } from '#data/records/verify-chain';
import { holdSite } from '#data/sites';
import { inTransaction } from '#data/transaction';
import { freshDatabase } from '../../_support/database';

const { query } = freshDatabase();
const AT = new Date('2026-11-01T05:30:00.123Z');
let site = '';

beforeEach(async () => {
  const entry = { key: newId(), name: 'Site', zone: 'UTC' };
  site = await inTransaction(async (tx) => (await holdSite(tx, entry, AT)).id);
});

const add = (...words: string[]) =>
  inTransaction((tx) =>
    appendRecords(
      tx,
      site,
      words.map((word) => ({ kind: 'said', body: { word, figures: [1e21, 5e-324, 0.1, -0.5], none: null } })),
      AT,
    ),
  );

/** Changes what nobody can change: as the owner, with every trigger off. */
const tamper = (sql: string) => query(`SET session_replication_role = replica; ${sql}`);

describe('the record of a site', () => {
  test('is whole when nothing was ever recorded, and after many entries in any grouping', async () => {
    expect(await verifyChain(site)).toEqual({ isWhole: true, links: 0 });
    await add('a');
    expect(await add('b', 'c')).toBe(3);
    await add();
    expect(await verifyChain(site)).toEqual({ isWhole: true, links: 3 });
  });

  test('is sealed as anybody can work out with a pen and SHA-256', async () => {
    await add('first');
    const { rows } = await query('SELECT hash, prev_hash FROM record WHERE site_id = $1', [site]);
    const figures = '[1e+21,5e-324,0.1,-0.5]';
    const text = `["${site}",1,"2026-11-01T05:30:00.123Z","said",{"figures":${figures},"none":null,"word":"first"}]`;
    const sealed = createHash('sha256').update(Buffer.alloc(32)).update(text).digest();
    expect(rows).toEqual([{ hash: sealed, prev_hash: Buffer.alloc(32) }]);
  });

  test('stays one chain when many add to it at once', async () => {
    await Promise.all(Array.from({ length: 12 }, (_, at) => add(`${at}`, `${at} again`)));
    expect(await verifyChain(site)).toEqual({ isWhole: true, links: 24 });
  });

  test('gains nothing from a transaction that is not kept', async () => {
    const broken = inTransaction(async (tx) => {
      await appendRecords(tx, site, [{ kind: 'said', body: {} }], AT);
      throw new Error('no');
    });
    await expect(broken).rejects.toThrow('no');
    await add('kept');
    expect(await verifyChain(site)).toEqual({ isWhole: true, links: 1 });
  });
});

describe('a record that was tampered with', () => {
  beforeEach(async () => {
    await add('a', 'b', 'c', 'd');
  });

  test.each([
    ['a word was changed', `UPDATE record SET body = body || '{"word":"x"}' WHERE seq = 2`, 2, 'not as it was sealed'],
    ['an instant was changed', `UPDATE record SET at = at + interval '1 ms' WHERE seq = 3`, 3, 'not as it was sealed'],
    ['a kind was changed', `UPDATE record SET kind = 'unsaid' WHERE seq = 1`, 1, 'not as it was sealed'],
    ['a link was taken out', 'DELETE FROM record WHERE seq = 2', 2, 'missing'],
    ['the last link was taken off', 'DELETE FROM record WHERE seq = 4', 4, 'missing'],
    ['a link was sealed anew', `UPDATE record SET hash = sha256('x') WHERE seq = 2`, 2, 'not as it was sealed'],
    [
      'the head was set back with it',
      'DELETE FROM record WHERE seq = 4; UPDATE record_head SET seq = 3',
      3,
      'not as it was sealed',
    ],
    [
      'a link was added apart',
      `INSERT INTO record SELECT site_id, 5, at, kind, body, hash, sha256('x') FROM record WHERE seq = 4`,
      5,
      'added apart',
    ],
  ])('is found out: %s', async (_what, sql, seq, wrong) => {
    const here = sql.replace(/(WHERE seq = \d|SET seq = 3)/g, (found) =>
      found.startsWith('SET') ? `${found} WHERE site_id = '${site}'` : `${found} AND site_id = '${site}'`,
    );
    await tamper(here);
    expect(await verifyChain(site)).toEqual({ isWhole: false, seq, wrong });
  });

  test('is found out when two links changed places', async () => {
    await tamper(`UPDATE record SET seq = 9 WHERE seq = 2 AND site_id = '${site}';
                  UPDATE record SET seq = 2 WHERE seq = 3 AND site_id = '${site}';
                  UPDATE record SET seq = 3 WHERE seq = 9 AND site_id = '${site}'`);
    expect(await verifyChain(site)).toEqual({ isWhole: false, seq: 2, wrong: 'not linked to the one before' });
  });
});

/** A link as whoever knows the rule would seal it, ready to be put into the table. */
function forged(seq: number, before: string, word: string): string {
  const text = canonicalText([site, seq, AT.toISOString(), 'said', { word }]);
  const hash = createHash('sha256').update(Buffer.from(before, 'hex')).update(text).digest('hex');
  return `('${site}', ${seq}, '${AT.toISOString()}', 'said', '{"word":"${word}"}', '\\x${before}', '\\x${hash}')`;
}

describe('a record that was forged by somebody who knows how it is sealed', () => {
  let seals: string[] = [];

  beforeEach(async () => {
    await add('a', 'b', 'c', 'd');
    const { rows } = await query('SELECT hash FROM record WHERE site_id = $1 ORDER BY seq', [site]);
    seals = ['00'.repeat(32), ...rows.map(({ hash }) => hash.toString('hex'))];
  });

  test('is found out where the links after one put in between went on counting', async () => {
    await tamper(`UPDATE record SET seq = seq + 100 WHERE site_id = '${site}' AND seq > 2;
                  UPDATE record SET seq = seq - 99 WHERE site_id = '${site}' AND seq > 100;
                  UPDATE record_head SET seq = 5 WHERE site_id = '${site}';
                  INSERT INTO record VALUES ${forged(3, seals[2] ?? '', 'between')}`);
    expect(await verifyChain(site)).toEqual({ isWhole: false, seq: 4, wrong: 'not linked to the one before' });
  });

  test('is found out where the link after one that was sealed anew still names the old seal', async () => {
    await tamper(`DELETE FROM record WHERE site_id = '${site}' AND seq = 2;
                  INSERT INTO record VALUES ${forged(2, seals[1] ?? '', 'other')}`);
    expect(await verifyChain(site)).toEqual({ isWhole: false, seq: 3, wrong: 'not linked to the one before' });
  });

  test('is found out at the head where the last link alone was sealed anew', async () => {
    await tamper(`DELETE FROM record WHERE site_id = '${site}' AND seq = 4;
                  INSERT INTO record VALUES ${forged(4, seals[3] ?? '', 'other')}`);
    expect(await verifyChain(site)).toEqual({ isWhole: false, seq: 4, wrong: 'not as it was sealed' });
  });
});

describe('the one text of a value', () => {
  test('is the same after the database has kept it', async () => {
    const value = fc
      .jsonValue({ stringUnit: 'grapheme' })
      .filter((given) => !JSON.stringify(given).includes('\\u0000'));
    await fc.assert(
      fc.asyncProperty(value, async (given) => {
        const [back] = await database().$queryRaw<
          { kept: unknown }[]
        >`SELECT ${JSON.stringify({ given })}::jsonb AS kept`;
        expect(canonicalText(back?.kept)).toBe(canonicalText({ given }));
      }),
      { numRuns: 200 },
    );
  });

  test('does not depend on the order of fields, and tells different values apart', () => {
    expect(canonicalText({ b: 1, a: [{ d: 2, c: undefined }] })).toBe('{"a":[{"d":2}],"b":1}');
    expect(canonicalText({ a: '1' })).not.toBe(canonicalText({ a: 1 }));
  });
});
