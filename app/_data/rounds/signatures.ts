import 'server-only';
import { database } from '../client';
import type { Transaction } from '../transaction';

/** Who signed a round, or looked at it again. */
export interface Signature {
  id: string;
  kind: 'signed' | 'second-look';
  at: Date;
  by: string;
  note: string | null;
}

/** The signatures of a round, in order. */
export async function listSignatures(
  siteId: string,
  roundId: string,
  asker: Pick<Transaction, 'roundSignature'> = database(),
): Promise<Signature[]> {
  const rows = await asker.roundSignature.findMany({ where: { siteId, roundId }, orderBy: [{ at: 'asc' }] });
  return rows.map(({ id, kind, at, by, note }) => ({
    id,
    kind: kind === 'signed' ? 'signed' : 'second-look',
    at,
    by,
    note,
  }));
}

/** Adds a signature to a round. */
export async function addSignature(
  tx: Transaction,
  siteId: string,
  roundId: string,
  signature: Signature,
): Promise<void> {
  await tx.roundSignature.create({ data: { siteId, roundId, ...signature } });
}
