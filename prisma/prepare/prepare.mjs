// @ts-check
// Makes the database ready for this copy of the code: reachable, not newer than the code, every migration applied, the job
// library's tables there, and the processes with the rights they need and no more. DATABASE_URL is the address by which the
// processes connect; where that account does not own the tables, DATABASE_OWNER_URL is the owner's.
// `--own` says that the whole server is Holdfast's: the database and the account of the processes are made when missing.
// `--set-up` also prints the token of a link by which the first account is made, while there is none.
// Ends with 0, a line that says what was done and a line that says what guards the record; or with 1 and one sentence.
import { prepareJobs } from './jobs.mjs';
import { migrate } from './migrations.mjs';
import { createIfMissing, requireReachable } from './reach.mjs';
import { Refusal } from './refusal.mjs';
import { grantRights } from './rights.mjs';
import { makeSetUpLink } from './set-up.mjs';

const appUrl = process.env.DATABASE_URL ?? '';
const ownerUrl = process.env.DATABASE_OWNER_URL || appUrl;
const isOwn = process.argv.includes('--own');

try {
  const name = process.env.DATABASE_OWNER_URL ? 'DATABASE_OWNER_URL' : 'DATABASE_URL';
  if (isOwn) await createIfMissing(ownerUrl, name);
  await requireReachable(ownerUrl, name);
  const applied = await migrate(ownerUrl);
  await prepareJobs(ownerUrl);
  if (ownerUrl !== appUrl && !isOwn) await requireReachable(appUrl, 'DATABASE_URL');
  const guard = await grantRights(ownerUrl, appUrl, { mayMakeAccount: isOwn && ownerUrl !== appUrl });
  console.log(applied === 0 ? 'nothing to apply' : `${applied} applied`);
  console.log(`guarded by: ${guard}`);
  const token = process.argv.includes('--set-up') ? await makeSetUpLink(ownerUrl) : undefined;
  if (token) console.log(`set-up ${token}`);
} catch (error) {
  console.error(error instanceof Refusal ? error.message : error);
  process.exitCode = 1;
}
