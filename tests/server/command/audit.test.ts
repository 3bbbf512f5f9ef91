import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { appendRecords } from '#data/records/append-records';
import { NO_SEAL, seal } from '#data/records/seal';
import { inTransaction } from '#data/transaction';
import { importFacility } from '#server/facility/import-facility';
import { LOCAL_PERSON } from '#server/gate/who';
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
