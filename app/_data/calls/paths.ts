import 'server-only';
import { database } from '../client';

/** A way out of this machine: the mail server, and the watch kept elsewhere. */
export type Path = 'mail' | 'outside';

/** How it stands with one. */
export interface PathSighting {
  path: Path;
  checkedAt: Date;
  isUp: boolean;
  /** When it last was; null: never. */
  upAt: Date | null;
  detail: string | null;
}

/** Notes how it stands with a way out. @param detail what was said where it is not up */
export async function notePath(path: Path, isUp: boolean, detail: string | null, at: Date): Promise<void> {
  const row = { checkedAt: at, isUp, detail, ...(isUp ? { upAt: at } : {}) };
  await database().pathSighting.upsert({ where: { path }, create: { path, ...row }, update: row });
}

/** How it stands with each way out that was ever looked at. */
export async function listPaths(): Promise<PathSighting[]> {
  const rows = await database().pathSighting.findMany();
  return rows.map((row) => ({ ...row, path: row.path as Path }));
}
