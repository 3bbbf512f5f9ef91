// @ts-check
// Makes the database that DATABASE_OWNER_URL names when it is missing, and leaves it empty: a backup is restored into it.
// Ends with 0, or with 1 and one sentence.
import { createIfMissing } from './reach.mjs';
import { Refusal } from './refusal.mjs';

try {
  await createIfMissing(process.env.DATABASE_OWNER_URL ?? '', 'DATABASE_OWNER_URL');
} catch (error) {
  console.error(error instanceof Refusal ? error.message : error);
  process.exitCode = 1;
}
