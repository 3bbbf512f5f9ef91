import 'server-only';
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { BackupFault } from '#server/backup/backup-fault';
import { type Restored, restoreBackup } from '#server/backup/restore-backup';
import { env } from '#server/env';
import { counted, fail } from './said';
import { cannot, withDatabase } from './with-database';
import { wordsGiven } from './words-given';

// The middle of `npm run restore`: DATABASE_URL names an empty database, as its owner. Rights, and what this copy of
// Holdfast has added since, come after it.

const USAGE = 'npm run -s restore -- FILE [--into URL] [--take-broken]';
const MIGRATIONS = fileURLToPath(new URL('../../../prisma/migrations', import.meta.url));

const { values, positionals } = wordsGiven(
  { allowPositionals: true, options: { 'take-broken': { type: 'boolean', default: false } } },
  USAGE,
);
const [file] = positionals;
if (file === undefined || positionals.length > 1) fail(`Name one backup: ${USAGE}`);

void withDatabase(async () => {
  try {
    const restored = await restoreBackup({
      path: resolve(file),
      url: env().DATABASE_URL,
      migrations: MIGRATIONS,
      takeBroken: values['take-broken'],
    });
    process.stdout.write(words(restored));
  } catch (error) {
    if (!(error instanceof BackupFault)) throw error;
    cannot(error.message);
  }
});

function words({ at, tables, rows, sites, links, broken }: Restored): string {
  const whole = broken.length === 0 ? 'every record is whole' : `BROKEN, taken as it is: ${broken.join('; ')}`;
  const counts = `${counted(tables, 'table')}, ${counted(rows, 'row')}`;
  return `${file} is restored as of ${at}: ${counts}. ${counted(sites, 'site')}, ${counted(links, 'link')}: ${whole}.\n`;
}
