import 'server-only';
import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import { readBackup } from '#server/backup/read-backup';
import { writeBackup } from '#server/backup/write-backup';
import { now } from '#server/clock';
import { counted, fail } from './said';
import { cannot, withDatabase } from './with-database';
import { wordsGiven } from './words-given';

const USAGE = 'npm run -s backup -- FILE';

const { positionals } = wordsGiven({ allowPositionals: true, options: {} }, USAGE);
const [file] = positionals;
if (file === undefined || positionals.length > 1) fail(`Name one file to write the backup to: ${USAGE}`);
const path = resolve(file);
if (existsSync(path)) fail(`${file} is there already: name another file, or take it away first.`);

void withDatabase(async () => {
  try {
    const bytes = await writeBackup(path, now());
    // Read back from the disk: what cannot be read is no backup.
    const { header, foot } = await readBackup(path);
    const rows = Object.values(foot.rows).reduce((sum, count) => sum + count, 0);
    const kept = `${counted(header.tables.length, 'table')}, ${counted(rows, 'row')}, ${bytes} bytes`;
    process.stdout.write(`${file} holds every site as of ${header.at}: ${kept}.\nKeep it on another machine.\n`);
  } catch (error) {
    const { code, syscall } = error as NodeJS.ErrnoException;
    if (syscall === undefined || syscall === 'connect') throw error;
    cannot(`${file} cannot be written (${code}); there is no backup.`);
  }
});
