import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { findAccountByEmail } from '#data/accounts/accounts';
import { keepDemoPeople } from '#server/accounts/demo-people';
import { keepFacility } from '#server/facility/import-facility';
import { LOCAL_PERSON, whoAsks } from '#server/gate/who';
import { findPersonLink } from '#server/sign-in/new-password';
import { signIn } from '#server/sign-in/sign-in';
import { whoIsHere } from '#server/sign-in/who-is-here';
import { type Visit, visitOf } from '#server/gate/visit';
import { describe, expect, test } from 'vitest';
import { ROOT } from '../../../app/_start/places.mjs';
import { freshDatabase } from '../../_support/database';
import { type Ended, runProgram } from '../../_support/run-program';
import { anAccount, headersOf, headersWith } from '../../_support/signed-in';
import { smallFacility } from '../../_support/small-facility';
import { site } from '../../_support/build-facility';

const { query } = freshDatabase();

/** The command as package.json writes it. */
function account(...words: string[]): Promise<Ended> {
  const { scripts } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'));
  const [, ...args] = String(scripts.account).split(' ');
  return runProgram(['node_modules/tsx/dist/cli.mjs', ...args, ...words], { HOLDFAST_ADDRESS: 'https://a.example' });
}
const visit = (): Visit => visitOf(headersWith('')) ?? expect.fail('no visit');
const tokenIn = ({ stdout }: Ended, purpose: string) =>
  new RegExp(`^https://a\\.example/${purpose}/([\\w-]{43}) `).exec(stdout)?.[1] ?? '';

describe('the command for accounts', () => {
  test('makes an account with a link to join, a link back in, and an end', async () => {
    const made = await account('new', 'Wren@tide.example', '--name', 'Wren', '--everywhere', 'manager');
    expect(made).toMatchObject({ code: 0, stderr: '' });
    expect(await findPersonLink('join')(visit(), { token: tokenIn(made, 'join') })).toMatchObject({ ok: true });
    expect(await findAccountByEmail('wren@tide.example')).toMatchObject({ name: 'Wren', everywhere: 'manager' });
    const link = await account('link', 'wren@tide.example');
    expect(await findPersonLink('reset')(visit(), { token: tokenIn(link, 'reset') })).toMatchObject({ ok: true });
    expect(await account('end', 'wren@tide.example')).toMatchObject({ code: 0, stderr: '' });
    expect(await findPersonLink('reset')(visit(), { token: tokenIn(link, 'reset') })).toMatchObject({ ok: false });
  });

  test.each([
    ['an address twice', ['new', 'twice@tide.example', '--name', 'Twice'], 1, 'has an account already'],
    ['nothing', [], 2, 'npm run -s account'],
  ])('says in a sentence what is wrong with %s', async (_what, words, code, said) => {
    if (code === 1) await anAccount({ email: 'twice@tide.example' }).catch(() => undefined);
    const ended = await account(...words);
    expect(ended).toMatchObject({ code, stdout: '' });
    expect(ended.stderr).toContain(said);
  });
});

describe('the people of the demonstration', () => {
  test('are one a role, may sign in to its sites alone, get new passwords, and every page says what they see', async () => {
    await keepFacility(LOCAL_PERSON, smallFacility(), undefined, true);
    await keepFacility(LOCAL_PERSON, { ...smallFacility(), site: site({ key: 'own', name: 'Own' }) });
    const people = await keepDemoPeople(LOCAL_PERSON);
    expect(people.map(({ role }) => role)).toEqual(['viewer', 'aquarist', 'lead', 'manager', 'admin']);
    for (const { role, email, password } of people) {
      // A name that nobody can have (RFC 2606, section 2).
      expect(email).toMatch(/\.example$/);
      const entered = await signIn(visit(), { email, password });
      const who = await whoAsks(headersWith(entered.ok ? (entered.value.cookies[0]?.value ?? '') : ''));
      expect(who).toMatchObject({ everywhere: null, at: { harbour: role } });
      expect(Object.keys(who?.at ?? {})).toEqual(['harbour']);
      expect(who && (await whoIsHere(who))).toMatchObject({ ok: true, value: { isDemo: true } });
    }
    const again = await keepDemoPeople(LOCAL_PERSON);
    const [first, second] = [people[0], again[0]];
    expect(second?.password).not.toBe(first?.password);
    expect(await signIn(visit(), { email: first?.email ?? '', password: first?.password ?? '' })).toMatchObject({
      ok: false,
    });
    const { rows } = await query("SELECT body FROM record WHERE kind = 'member-let-in' ORDER BY seq");
    expect(rows.map(({ body }) => body.role)).toEqual(people.map(({ role }) => role));
    expect(JSON.stringify(rows)).not.toContain('demo.example');
  });

  test('are not said to be there where one sees no site of theirs', async () => {
    const who = await whoAsks(await headersOf(await anAccount({ name: 'Rill' })));
    expect(who && (await whoIsHere(who))).toEqual({ ok: true, value: { name: 'Rill', isDemo: false } });
  });
});
