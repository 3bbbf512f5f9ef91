// @ts-check
// Makes the database that DATABASE_URL names ready for this copy of the code: reachable, not newer than the code, every
// migration applied, the job library's tables there. `--create` makes the database itself first when it is missing;
// `--set-up` also prints the token of a link by which the first account is made, while there is none.
// Ends with 0 and a line that says what was done, or with 1 and one sentence.
import { prepareJobs } from './jobs.mjs';
import { migrate } from './migrations.mjs';
import { createIfMissing, requireReachable } from './reach.mjs';
import { Refusal } from './refusal.mjs';
import { makeSetUpLink } from './set-up.mjs';

const url = process.env.DATABASE_URL ?? '';

try {
  if (process.argv.includes('--create')) await createIfMissing(url);
  await requireReachable(url);
  const applied = await migrate(url);
  await prepareJobs(url);
  console.log(applied === 0 ? 'nothing to apply' : `${applied} applied`);
  const token = process.argv.includes('--set-up') ? await makeSetUpLink(url) : undefined;
  if (token) console.log(`set-up ${token}`);
} catch (error) {
  console.error(error instanceof Refusal ? error.message : error);
  process.exitCode = 1;
}
