import 'server-only';
import { database } from '../client';

/** Version of PostgreSQL the database runs on, such as `17.10`. */
export async function serverVersion(): Promise<string> {
  const [row] = await database().$queryRaw<{ version: string }[]>`SELECT current_setting('server_version') AS version`;
  return row?.version ?? '';
}

/** @returns bytes the database takes on its disk */
export async function databaseSize(): Promise<number> {
  const [row] = await database().$queryRaw<{ size: bigint }[]>`SELECT pg_database_size(current_database()) AS size`;
  return Number(row?.size ?? 0);
}
