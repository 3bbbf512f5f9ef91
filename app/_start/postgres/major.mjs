// @ts-check
// A database can be read by the major version of PostgreSQL that made it and by no other. Holdfast moves from one to the
// other by a backup, which both can read.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Failure } from '../failure.mjs';
import { binaries } from './binaries.mjs';

/**
 * @param {string} data folder of Holdfast
 * @param {string} folder of the cluster in it
 * @param {number} [own] major version of the PostgreSQL that came with this copy
 * @throws {Failure} when another major version made the cluster: the steps from one to the other
 */
export function requireSameMajor(data, folder, own = binaries().major) {
  const made = Number.parseInt(readFileSync(join(folder, 'PG_VERSION'), 'utf8'), 10);
  if (made === own) return;
  throw new Failure(
    [
      `The database in ${data} was made by PostgreSQL ${made}. This copy of Holdfast brings PostgreSQL ${own}, which`,
      'cannot read it. Nothing was changed. To move it over:',
      '  1. With the copy of Holdfast that ran it until now:  npm start',
      '     and beside it:                                    npm run -s backup -- FILE',
      `     If that copy is gone, the newest file in ${join(data, 'backups')} is the backup.`,
      `  2. Stop that copy, and move the folder aside:        mv ${data} ${data}.${made}`,
      '  3. With this copy:                                   npm run -s restore -- FILE',
      '     and then:                                         npm start',
    ].join('\n'),
  );
}
