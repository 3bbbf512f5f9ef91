import 'server-only';
import { ROLES, type Role } from '#core/rota/rota';
import { findAccountByEmail } from '#data/accounts/accounts';
import { inTransaction } from '#data/transaction';
import { letBackIn, newAccount } from '#server/accounts/by-command';
import { endEverywhere } from '#server/accounts/end-account';
import { keepDemoPeople } from '#server/accounts/demo-people';
import { linkAddress } from '#server/accounts/link-address';
import { LOCAL_PERSON } from '#server/gate/who';
import { newEmail, personName } from '#shape/accounts/sign-in';
import { now } from '../clock';
import { demoPeopleWords } from './demo-people-words';
import { fail } from './said';
import { cannot, runningAddress, withDatabase } from './with-database';
import { wordsGiven } from './words-given';

const USAGE = `npm run -s account -- link EMAIL                               a link for somebody who cannot sign in
npm run -s account -- new EMAIL --name NAME [--everywhere ROLE]  an account, and the link by which its person joins
npm run -s account -- end EMAIL                                  nobody signs in by this account any more
npm run -s account -- demo                                       new passwords for the people of the demonstration`;

const { values, positionals } = wordsGiven(
  { allowPositionals: true, options: { name: { type: 'string' }, everywhere: { type: 'string' } } } as const,
  USAGE,
);
const [what, email = '', ...more] = positionals;
const { name, everywhere } = values;
const say = (line: string) => process.stdout.write(`${line}\n`);

if (more.length > 0 || (what !== 'new' && (name !== undefined || everywhere !== undefined))) fail(USAGE);
switch (what ?? '') {
  case 'link':
    void withDatabase(link);
    break;
  case 'new':
    void withDatabase(() => makeNew(asEmail(), asName(), asRole()));
    break;
  case 'end':
    void withDatabase(end);
    break;
  case 'demo':
    if (email !== '') fail(USAGE);
    void withDatabase(async () => void process.stdout.write(demoPeopleWords(await keepDemoPeople(LOCAL_PERSON))));
    break;
  default:
    fail(USAGE);
}

async function link(): Promise<void> {
  const token = await inTransaction((tx) => letBackIn(tx, email, LOCAL_PERSON.id, now()));
  if (token === null) return cannot(`Nobody may sign in as "${email}".`);
  say(`${linkAddress('reset', token, runningAddress())} (works once, within an hour)`);
}

async function makeNew(address: string, person: string, role: Role | null): Promise<void> {
  const made = await inTransaction((tx) =>
    newAccount(tx, { email: address, name: person, everywhere: role }, LOCAL_PERSON.id, now()),
  );
  if (made === null) return cannot(`${address} has an account already.`);
  say(`${linkAddress('join', made.token, runningAddress())} (works once, within a week)`);
}

async function end(): Promise<void> {
  const account = await findAccountByEmail(email);
  if (!account || !(await endEverywhere(account.id, LOCAL_PERSON.id, now())))
    return cannot(`Nobody may sign in as "${email}".`);
  say('The account has ended: nobody is signed in by it any more, nobody can be, and it has no role at any site.');
}

function asEmail(): string {
  const read = newEmail.safeParse(email);
  return read.success ? read.data : fail(`"${email}" is no e-mail address\n${USAGE}`);
}

function asName(): string {
  const read = personName.safeParse(name);
  return read.success ? read.data : fail(`Give a name with --name\n${USAGE}`);
}

function asRole(): Role | null {
  if (everywhere === undefined) return null;
  return ROLES.find((role) => role === everywhere) ?? fail(`--everywhere is one of ${ROLES.join(', ')}`);
}
