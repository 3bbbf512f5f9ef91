import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { appendRecords } from '#data/records/append-records';
import { NO_SEAL, seal } from '#data/records/seal';
import { inTransaction } from '#data/transaction';
import { importFacility } from '#server/facility/import-facility';
import { LOCAL_PERSON } from '#server/gate/who';
import { auditWords, isWhole } from '#server/command/print-audit';
import { auditRecords } from '#server/record/audit-records';
import { writeFacility } from '#shape/facility/write-facility';
import { ROOT } from '../../../app/_start/places.mjs';
import { facility } from '../../_support/build-facility';
import { freshDatabase } from '../../_support/database';
import { runProgram } from '../../_support/run-program';
import { temporaryFolder } from '../../_support/temporary-folder';

const { query } = freshDatabase();
const folder = temporaryFolder();
const AT = new Date('2026-11-01T05:30:00.000Z');
let site = '';
let links = 0;

function audit(...words: string[]) {
  const { scripts } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'));
  const [, ...args] = String(scripts.audit).split(' ');
  return runProgram(['node_modules/tsx/dist/cli.mjs', ...args, ...words]);
}

const add = (word: string) => inTransaction((tx) => appendRecords(tx, site, [{ kind: 'said', body: { word } }], AT));

/** Changes what nobody can change: as the owner, with every trigger off. */
const tamper = (sql: string) => query(`SET session_replication_role = replica; ${sql}`);

/** What an owner of the database can do: another word in link 1, and every seal from there on worked out anew. */
async function rewrite(word: string): Promise<void> {
  const { rows } = await query('SELECT seq, at, kind, body FROM record WHERE site_id = $1 ORDER BY seq', [site]);
  let before = NO_SEAL;
  for (const { seq, at, kind, body } of rows) {
    const told = seq === 1 ? { ...body, word } : body;
    const hash = seal(before, { siteId: site, seq, at, kind, body: told });
    const hex = (bytes: Uint8Array) => `'\\x${Buffer.from(bytes).toString('hex')}'`;
    await tamper(
      `UPDATE record SET body = '${JSON.stringify(told)}', prev_hash = ${hex(before)}, hash = ${hex(hash)}
        WHERE site_id = '${site}' AND seq = ${seq};
       UPDATE record_head SET hash = ${hex(hash)} WHERE site_id = '${site}'`,
    );
    before = hash;
  }
}

beforeAll(async () => {
  await importFacility(LOCAL_PERSON, { text: writeFacility(facility()) });
  site = (await query('SELECT id FROM site')).rows[0].id;
});

beforeEach(async () => {
  links = await add('as it was');
});

describe('an audit of the record', () => {
  test('finds a whole record whole, says what it cannot find, and writes an anchor that holds later', async () => {
    const file = join(folder, 'whole.txt');
    const first = await audit('--anchor-to', file);
    expect(first).toMatchObject({ code: 0, stderr: '' });
    expect(first.stdout).toContain(`Harbour Aquarium (harbour): whole, ${links} links\n`);
    expect(first.stdout).toContain('Without an anchor kept elsewhere, this cannot tell');
    expect(first.stdout).toContain('1 anchor added to');
    await add('later');
    const second = await audit('--against', file);
    expect(second).toMatchObject({ code: 0, stderr: '' });
    expect(second.stdout).toContain(`whole, ${links + 1} links, 1 anchor held\n`);
    expect(second.stdout).not.toContain('Without an anchor');
  });

  test('finds a record rewritten and sealed anew only where an anchor was kept', async () => {
    const file = join(folder, 'rewritten.txt');
    await audit('--anchor-to', file);
    await rewrite('as it never was');
    expect((await audit()).code).toBe(0);
    const against = await audit('--against', file);
    expect(against.code).toBe(1);
    expect(against.stdout).toContain(`for link ${links} of site ${site} finds another seal`);
    expect(against.stdout).toContain(`whole, ${links} links, no anchor held\n`);
  });

  test('finds a record cut short with its head only where an anchor was kept', async () => {
    const file = join(folder, 'cut.txt');
    await audit('--anchor-to', file);
    await tamper(`UPDATE record_head SET seq = seq - 1,
                    hash = (SELECT prev_hash FROM record WHERE site_id = '${site}' AND seq = ${links});
                  DELETE FROM record WHERE site_id = '${site}' AND seq = ${links}`);
    expect((await audit()).code).toBe(0);
    const against = await audit('--against', file);
    expect(against.code).toBe(1);
    expect(against.stdout).toContain(`for link ${links} of site ${site} finds no such link`);
  });

  test('misses the site that an anchor speaks of', async () => {
    const file = join(folder, 'elsewhere.txt');
    const other = '01a2119e-3a5a-773f-ac5d-188c0fd166eb';
    writeFileSync(file, `holdfast.anchor/1 ${other} 1 ${'0'.repeat(64)} 2026-11-25T06:00:00Z\n`);
    const ended = await audit('--against', file);
    expect(ended.code).toBe(1);
    expect(ended.stdout).toContain(`for link 1 of site ${other} finds no such site`);
  });

  test('shows nobody a record they may not see', async () => {
    const viewer = { id: 'somebody', name: 'Somebody', everywhere: null, at: { harbour: 'viewer' as const } };
    expect(await auditRecords(viewer, { anchors: [] })).toEqual({ ok: true, value: { sites: [], broken: [] } });
  });

  test.each([
    ['a word too many', ['now'], '"now" is not understood'],
    ['a file that is not there', ['--against', 'nowhere.txt'], 'nowhere.txt cannot be read'],
    ['a file that holds none', ['--against', '/dev/null'], 'holds no anchor'],
    ['a file that is something else', ['--against', 'package.json'], 'package.json:1: not an anchor'],
  ])('ends with 2 and a sentence at %s', async (_what, words, sentence) => {
    const ended = await audit(...words);
    expect(ended.code).toBe(2);
    expect(ended.stderr).toContain(sentence);
  });

  test.each([
    [
      'a changed word',
      `UPDATE record SET body = '{"word":"x"}' WHERE SITE AND seq = 2`,
      'link 2, not as it was sealed',
    ],
    ['a link taken out', 'DELETE FROM record WHERE SITE AND seq = 2', 'link 2, missing'],
    [
      'two links that changed places',
      `UPDATE record SET seq = 9999 WHERE SITE AND seq = 2; UPDATE record SET seq = 2 WHERE SITE AND seq = 3;
       UPDATE record SET seq = 3 WHERE SITE AND seq = 9999`,
      'link 2, not linked to the one before',
    ],
    [
      'a link put in between',
      `UPDATE record SET seq = seq + 5000 WHERE SITE AND seq > 2; UPDATE record SET seq = seq - 4999 WHERE SITE AND seq > 5000;
       INSERT INTO record SELECT site_id, 3, at, kind, body, hash, sha256('x') FROM record WHERE SITE AND seq = 2;
       UPDATE record_head SET seq = seq + 1 WHERE SITE`,
      'link 3, not as it was sealed',
    ],
    ['a record cut short', 'DELETE FROM record WHERE SITE AND seq > 3', 'link 4, missing'],
  ])('names the link and what is wrong with it at %s', async (_what, sql, named) => {
    await query('CREATE TABLE kept AS SELECT * FROM record; CREATE TABLE kept_head AS SELECT * FROM record_head');
    await tamper(sql.replaceAll('SITE', `site_id = '${site}'`));
    const audited = await auditRecords(LOCAL_PERSON, { anchors: [] });
    await tamper(`DELETE FROM record; INSERT INTO record SELECT * FROM kept; DROP TABLE kept;
                  DELETE FROM record_head; INSERT INTO record_head SELECT * FROM kept_head; DROP TABLE kept_head`);
    if (!audited.ok) throw new Error(JSON.stringify(audited.reason));
    expect(isWhole(audited.value)).toBe(false);
    expect(auditWords(audited.value, 0)).toContain(`Harbour Aquarium (harbour): BROKEN at ${named}\n`);
    expect(await auditRecords(LOCAL_PERSON, { anchors: [] })).toMatchObject({
      value: { sites: [{ verdict: { isWhole: true } }] },
    });
  });

  test('says of each site where its last daily anchor went, and holds the record to it', async () => {
    const seal = (await query('SELECT hash FROM record WHERE site_id = $1 AND seq = 2', [site])).rows[0].hash;
    await query('INSERT INTO record_anchor VALUES ($1, $2, 2, $3, $4)', [site, '2026-11-02', seal, AT]);
    const words = async () => {
      const audited = await auditRecords(LOCAL_PERSON, { anchors: [] });
      return audited.ok ? auditWords(audited.value, 0) : '';
    };
    expect(await words()).toContain('  the anchor of 2026-11-02 for link 2 went nowhere outside\n');
    await query("INSERT INTO anchor_sent VALUES ($1, '2026-11-02', 'file', '/mnt/away', $2)", [site, AT]);
    expect(await words()).toContain('for link 2 went to file /mnt/away at 2026-11-01T05:30:00.000Z\n');
    await rewrite('as it never was either');
    expect(await words()).toContain('BROKEN at link 2, not as it was anchored\n');
  });

  // Last: what is broken here stays so.
  test('names the first broken link, and writes no anchor that would vouch for it', async () => {
    const file = join(folder, 'broken.txt');
    await tamper(`UPDATE record SET kind = 'unsaid' WHERE site_id = '${site}' AND seq IN (1, 2)`);
    const ended = await audit('--anchor-to', file);
    expect(ended.code).toBe(1);
    expect(ended.stdout).toContain('(harbour): BROKEN at link 1, not as it was sealed');
    expect(() => readFileSync(file)).toThrow('ENOENT');
  });
});
