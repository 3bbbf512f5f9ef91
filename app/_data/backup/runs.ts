import 'server-only';
import { database } from '../client';
import { newId } from '../new-id';

/** There it is, or why not. */
export type Outcome = { path: string; bytes: number; problem: null } | { path: null; bytes: null; problem: string };

/** How a scheduled backup went. */
export type BackupRun = {
  beganAt: Date;
  endedAt: Date;
  /** Name of the machine whose worker made it. */
  machine: string;
} & Outcome;

type GoodRun = Extract<BackupRun, { problem: null }>;
type BadRun = Exclude<BackupRun, GoodRun>;

/** Keeps how one went; those that ended before `forgetBefore` are forgotten. */
export async function recordRun(run: BackupRun, forgetBefore: Date): Promise<void> {
  const { backupRun } = database();
  await backupRun.create({ data: { id: newId(), ...run, bytes: run.bytes === null ? null : BigInt(run.bytes) } });
  await backupRun.deleteMany({ where: { endedAt: { lt: forgetBefore } } });
}

/** The last one that succeeded. */
export async function lastGoodRun(): Promise<GoodRun | null> {
  const row = await database().backupRun.findFirst({ where: { problem: null }, orderBy: { beganAt: 'desc' } });
  if (row?.path == null || row.bytes === null) return null;
  const { beganAt, endedAt, machine, path, bytes } = row;
  return { beganAt, endedAt, machine, path, bytes: Number(bytes), problem: null };
}

/** The last one that failed. */
export async function lastBadRun(): Promise<BadRun | null> {
  const row = await database().backupRun.findFirst({ where: { problem: { not: null } }, orderBy: { beganAt: 'desc' } });
  if (row?.problem == null) return null;
  const { beganAt, endedAt, machine, problem } = row;
  return { beganAt, endedAt, machine, path: null, bytes: null, problem };
}
