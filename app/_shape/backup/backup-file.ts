import { z } from 'zod';

/** First word a backup says of itself. Whoever changes the form raises the number. */
export const BACKUP_FORMAT = 'holdfast.backup/1';

const name = z.string().min(1).max(63);

/**
 * The first line of a backup. After it every table follows: a line that names it, its rows in the text form of COPY, and a
 * line of `\.`; then the foot and the check sum, a line each.
 */
export const backupHeader = z.object({
  format: z.literal(BACKUP_FORMAT),
  /** Instant of the snapshot. */
  at: z.iso.datetime(),
  /** Version of the server it was read from. */
  server: z.string(),
  /** Migrations the database had seen, in the order they were applied, with their SHA-256. */
  migrations: z.array(z.object({ name: z.string().regex(/^\d{14}_\w+$/), checksum: z.string() })).min(1),
  /** Tables in the order they can be loaded in: none before one it refers to. */
  tables: z.array(z.object({ name, columns: z.array(name).min(1) })).min(1),
  /** First days of the months whose readings it holds: their parts have to be there before the readings are. */
  parts: z.array(z.iso.date()).default([]),
});

export type BackupHeader = z.output<typeof backupHeader>;

/** The line before the rows of a table. */
export const backupTable = z.object({ table: name });

/** The last line but one: what has to come out when the backup is restored. */
export const backupFoot = z.object({
  /** Rows by table. */
  rows: z.record(z.string(), z.int().min(0)),
  /** Last link of the record of each site, and its seal. */
  heads: z.array(z.object({ site: z.uuid(), seq: z.int().min(0), seal: z.string().regex(/^[0-9a-f]{64}$/) })),
});

/** The last line: SHA-256 of every byte before it, unpacked. */
export const backupSum = z.object({ sha256: z.string().regex(/^[0-9a-f]{64}$/) });

export type BackupFoot = z.output<typeof backupFoot>;
