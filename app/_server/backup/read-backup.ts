import 'server-only';
import { createHash, type Hash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { createGunzip } from 'node:zlib';
import type { z } from 'zod';
import {
  BACKUP_FORMAT,
  type BackupFoot,
  type BackupHeader,
  backupFoot,
  backupHeader,
  backupSum,
  backupTable,
} from '#shape/backup/backup-file';
import { BackupFault } from './backup-fault';
import { ByteLines, END } from './byte-lines';

/** What is done with a backup while it is read. */
export interface Reader {
  header?: (header: BackupHeader) => Promise<void>;
  /** Has to take every row. */
  table?: (name: string, rows: AsyncIterable<Buffer>) => Promise<void>;
}

/** What a backup says of itself. */
export interface BackupRead {
  header: BackupHeader;
  foot: BackupFoot;
}

/**
 * Reads a backup from its first byte to its last, and works its check sum out again.
 *
 * @param path     the file
 * @param reader   is told of each part as it comes, which is before the check sum is known
 * @returns        header and foot
 * @throws         {BackupFault} when it is no backup, cut short or altered; its sentence names the file
 */
export async function readBackup(path: string, reader: Reader = {}): Promise<BackupRead> {
  const file = createReadStream(path);
  const unpacked = createGunzip();
  file.on('error', (error) => unpacked.destroy(error));
  try {
    return await readLines(new ByteLines(file.pipe(unpacked)), reader);
  } catch (error) {
    const why = faultOf(error);
    if (why === undefined) throw error;
    throw new BackupFault(`${path} cannot be used: ${why}.`);
  } finally {
    file.destroy();
    unpacked.destroy();
  }
}

async function readLines(lines: ByteLines, reader: Reader): Promise<BackupRead> {
  const hash = createHash('sha256');
  const header = parsed(backupHeader, await counted(lines, hash));
  if (!header) throw new BackupFault(`it is no backup of the form ${BACKUP_FORMAT}`);
  await reader.header?.(header);
  for (const { name } of header.tables) {
    const said = parsed(backupTable, await counted(lines, hash));
    if (said?.table !== name) throw new BackupFault(`it is cut short or altered before the table ${name}`);
    await takeRows(name, rowsOf(lines, hash), reader);
  }
  const foot = parsed(backupFoot, await counted(lines, hash));
  const sum = parsed(backupSum, await lines.line());
  if (!foot || !sum) throw new BackupFault('it is cut short, or its end was altered');
  if (sum.sha256 !== hash.digest('hex')) throw new BackupFault('it was altered, and its check sum does not agree');
  if (!(await lines.isOver())) throw new BackupFault('it was altered: something follows its end');
  return { header, foot };
}

async function takeRows(name: string, rows: AsyncGenerator<Buffer>, reader: Reader): Promise<void> {
  await reader.table?.(name, rows);
  // Whatever was not taken is passed over.
  while (!(await rows.next()).done);
}

async function* rowsOf(lines: ByteLines, hash: Hash): AsyncGenerator<Buffer> {
  for await (const piece of lines.rows()) {
    hash.update(piece);
    if (piece.equals(END)) return;
    yield piece;
  }
}

async function counted(lines: ByteLines, hash: Hash): Promise<Buffer | null> {
  const line = await lines.line();
  if (line) hash.update(line);
  return line;
}

function parsed<S extends z.ZodType>(shape: S, line: Buffer | null): z.output<S> | undefined {
  try {
    return line === null ? undefined : shape.safeParse(JSON.parse(line.toString('utf8'))).data;
  } catch {
    return undefined;
  }
}

/** What is wrong with the file, when that is what broke. */
function faultOf(error: unknown): string | undefined {
  if (error instanceof BackupFault) return error.message;
  const { code } = error as NodeJS.ErrnoException;
  if (code === 'Z_BUF_ERROR') return 'it is cut short';
  if (code === 'Z_DATA_ERROR') return 'it is no backup, or it was altered';
  if (code === 'ENOENT' || code === 'EISDIR' || code === 'EACCES') return 'there is no such file that may be read';
  return undefined;
}
