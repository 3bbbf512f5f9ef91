import 'server-only';
import { spawnSync } from 'node:child_process';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { BackupFault } from '#server/backup/backup-fault';
import { type Restored, restoreBackup } from '#server/backup/restore-backup';
import { now } from '#server/clock';
import { env } from '#server/env';
import { wakeDue } from '#server/reviews/wake-due';
import { counted, fail } from './said';
import { cannot, withDatabase } from './with-database';
import { wordsGiven } from './words-given';

// The second half of `npm run restore`: the database that DATABASE_URL names is there and answers.

const USAGE = 'npm run -s restore -- FILE [--into URL] [--take-broken]';
const PRISMA = fileURLToPath(new URL('../../../prisma', import.meta.url));

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
      migrations: join(PRISMA, 'migrations'),
      takeBroken: values['take-broken'],
    });
    process.stdout.write(words(restored));
  } catch (error) {
    if (!(error instanceof BackupFault)) throw error;
    return cannot(error.message);
  }
  const { status, stderr } = spawnSync(process.execPath, [join(PRISMA, 'prepare/prepare.mjs')], { encoding: 'utf8' });
  if (status !== 0) return cannot(`It is restored, but could not be brought up to this copy: ${stderr.trim()}`);
  await wakeDue(now());
  process.stdout.write(
    'Start Holdfast with `npm start`; the reviews are computed anew, and everybody signs in again.\n',
  );
});

function words({ at, tables, rows, sites, links, broken }: Restored): string {
  const whole = broken.length === 0 ? 'every record is whole' : `BROKEN, taken as it is: ${broken.join('; ')}`;
  const counts = `${counted(tables, 'table')}, ${counted(rows, 'row')}`;
  return `${file} is restored as of ${at}: ${counts}. ${counted(sites, 'site')}, ${counted(links, 'link')}: ${whole}.\n`;
}
