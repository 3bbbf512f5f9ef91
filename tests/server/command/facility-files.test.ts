import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { writeFacility } from '#shape/facility/write-facility';
import { beforeAll, describe, expect, test } from 'vitest';
import { ROOT } from '../../../app/_start/places.mjs';
import { facility, site } from '../../_support/build-facility';
import { freshDatabase } from '../../_support/database';
import { type Ended, runProgram } from '../../_support/run-program';
import { temporaryFolder } from '../../_support/temporary-folder';

const { query } = freshDatabase();
const folder = temporaryFolder();
const file = join(folder, 'harbour.json');
const empty = { DATABASE_URL: undefined, HOLDFAST_DATA: join(folder, 'no-data') };

/** A command as package.json writes it. */
function command(
  name: 'import' | 'export',
  words: string[],
  env: Record<string, string | undefined> = {},
): Promise<Ended> {
  const { scripts } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'));
  const [tsx, ...args] = String(scripts[name]).split(' ');
  expect(tsx).toBe('tsx');
  return runProgram(['node_modules/tsx/dist/cli.mjs', ...args, ...words], env);
}

const sites = async () => (await query('SELECT key FROM site')).rows;

beforeAll(() => {
  writeFileSync(file, writeFacility(facility()));
});

describe('import and export on the command line', () => {
  test('store a file, and give it back as it was', async () => {
    const dry = await command('import', [file, '--dry-run']);
    expect(dry).toMatchObject({ code: 0, stderr: '' });
    expect(dry.stdout).toContain('Harbour Aquarium (harbour) is new');
    expect(await sites()).toEqual([]);
    expect(await command('import', [file])).toEqual({
      code: 0,
      stdout: 'Harbour Aquarium (harbour) is stored: 1 system.\n',
      stderr: '',
    });
    expect(await command('export', ['harbour'])).toEqual({ code: 0, stdout: writeFacility(facility()), stderr: '' });
    const yaml = await command('export', ['harbour', '--format', 'yaml']);
    expect(yaml.stdout).toBe(writeFacility(facility(), { format: 'yaml' }));
  });

  test('say what a changed file would change', async () => {
    const changed = join(folder, 'changed.json');
    writeFileSync(changed, writeFacility(facility({ site: site({ altitudeM: 9 }) })));
    const { stdout, code } = await command('import', [changed, '--dry-run']);
    expect(code).toBe(0);
    expect(stdout).toContain('The site\n  altitude: 5 m → 9 m\n');
  });

  test.each<[string, 'import' | 'export', string[], string]>([
    ['no file', 'import', [], 'Give one facility file'],
    ['a file that is not there', 'import', ['nowhere.json'], 'nowhere.json cannot be read'],
    ['a site that is not there', 'export', ['nowhere'], 'There is no site "nowhere"'],
    ['a word that is no format', 'export', ['harbour', '--format', 'xml'], 'neither json nor yaml'],
  ])('end with 2 and a sentence at %s', async (_what, name, words, sentence) => {
    const ended = await command(name, words);
    expect(ended.code).toBe(2);
    expect(ended.stderr).toContain(sentence);
  });

  test('end with 2 at a broken file, and name every fault with its place', async () => {
    const broken = join(folder, 'broken.json');
    writeFileSync(broken, writeFacility(facility()).replaceAll('"gallery"', '"Gallery!"'));
    const { code, stderr } = await command('import', [broken]);
    expect(code).toBe(2);
    expect(
      stderr
        .trim()
        .split('\n')
        .slice(0, -1)
        .every((line) => /broken\.json:\d+:\d+ \S+: /.test(line)),
    ).toBe(true);
    expect(stderr).toContain('nothing was imported');
  });

  test('end with 1 and a sentence when no database is named or kept, or none answers', async () => {
    const none = await command('import', [file], empty);
    expect(none).toMatchObject({ code: 1, stdout: '' });
    expect(none.stderr).toMatch(/^There is no database yet: .*\.\n$/);
    const silent = await command('export', ['harbour'], { DATABASE_URL: 'postgresql://a:b@127.0.0.1:1/c' });
    expect(silent).toMatchObject({ code: 1, stdout: '' });
    expect(silent.stderr).toMatch(/^The database does not answer: .*\.\n$/);
  });

  test('find the database that a start keeps in its data folder', async () => {
    const address = new URL(process.env.DATABASE_URL ?? '');
    const kept = {
      user: address.username,
      password: address.password,
      port: Number(address.port),
      database: address.pathname.slice(1),
    };
    writeFileSync(join(folder, 'database.json'), JSON.stringify(kept));
    const { code, stdout } = await command('export', ['harbour'], { DATABASE_URL: undefined, HOLDFAST_DATA: folder });
    expect(code).toBe(0);
    expect(stdout).toBe(writeFacility(facility()));
  });
});

describe('the demonstration', () => {
  test('is stored once, and never over a site that bears one of its keys', async () => {
    const load = () => runProgram(['--conditions=react-server', '--import', 'tsx', 'app/_server/command/load-demo.ts']);
    const first = await load();
    expect(first).toMatchObject({ code: 0, stderr: '' });
    expect(first.stdout).toContain('harbour is there already and was left as it is.');
    const { rows } = await query(`SELECT key, name, revision FROM site ORDER BY key`);
    expect(rows.length).toBeGreaterThan(1);
    expect(rows).toContainEqual({ key: 'harbour', name: 'Harbour Aquarium', revision: 1 });
    expect(await load()).toMatchObject({ code: 0, stderr: '' });
    expect((await query(`SELECT key, name, revision FROM site ORDER BY key`)).rows).toEqual(rows);
  });

  test('has tests as old as on the day it was written for', async () => {
    const { rows } = await query(`SELECT max(tested_on) AS last, min(tested_on) AS first FROM safeguard_test t
      JOIN site s ON s.id = t.site_id AND s.key <> 'harbour'`);
    const days = (Date.now() - rows[0].last.getTime()) / 86_400_000;
    expect(days).toBeGreaterThan(0);
    expect(days).toBeLessThan(30);
  });
});
