import 'server-only';
import type { RecordEntry } from '#data/records/seal';
import type { Transaction } from '#data/transaction';
import type { Past } from '../../../seed/past/past';

/** What was done at a site of the demonstration, and when; told to its record in order of time. */
export type ToldEntry = RecordEntry & { at: Date };

/** Everything that those who keep a part of the past need. */
export interface Telling {
  tx: Transaction;
  siteId: string;
  past: Past;
  /** Id of a thing of the description by its table, its system's key (null for the site's own) and its key. */
  idOf: (table: string, system: string | null, key: string) => string;
  /** Account of a person of the rota, by key. */
  accountOf: (person: string) => string;
  told: ToldEntry[];
}

/** Adds to what is told. */
export function tell({ told }: Telling, atMs: number, kind: string, body: Record<string, unknown>): void {
  told.push({ at: new Date(atMs), kind, body });
}
