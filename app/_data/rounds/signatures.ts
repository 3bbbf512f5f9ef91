import 'server-only';
import { database } from '../client';
import { type TakenBack, takenBack } from '../taken-back';
import type { Transaction } from '../transaction';

/** Who signed a round, or looked at it again. */
export interface Signature {
  id: string;
  kind: 'signed' | 'second-look';
  at: Date;
  by: string;
  note: string | null;
}

/** The signatures of a round that count, in order: a second look that was taken back does not. */
export async function listSignatures(
  siteId: string,
  roundId: string,
  asker: Pick<Transaction, 'roundSignature' | 'takenBack'> = database(),
): Promise<Signature[]> {
  const rows = await asker.roundSignature.findMany({ where: { siteId, roundId }, orderBy: [{ at: 'asc' }] });
  const taken = await takenBack(siteId, 'second-look', looksIn(rows), asker);
  return rows.filter(({ id }) => !taken.has(id)).map(asSignature);
}

/** Second looks at a round that were taken back, in order. */
export async function looksTakenBack(siteId: string, roundId: string): Promise<(Signature & { taken: TakenBack })[]> {
  const rows = await database().roundSignature.findMany({
    where: { siteId, roundId, kind: 'second-look' },
    orderBy: [{ at: 'asc' }],
  });
  const found = await takenBack(siteId, 'second-look', looksIn(rows));
  return rows.flatMap((row) => {
    const taken = found.get(row.id);
    return taken ? [{ ...asSignature(row), taken }] : [];
  });
}

/** A second look by its id, with its round. */
export async function findSignedLook(
  tx: Pick<Transaction, 'roundSignature'>,
  siteId: string,
  id: string,
): Promise<{ by: string; round: string } | null> {
  const row = await tx.roundSignature.findUnique({ where: { siteId_id: { siteId, id } } });
  return row?.kind === 'second-look' ? { by: row.by, round: row.roundId } : null;
}

function looksIn(rows: readonly { id: string; kind: string }[]): string[] {
  return rows.filter(({ kind }) => kind === 'second-look').map(({ id }) => id);
}

function asSignature({ id, kind, at, by, note }: Omit<Signature, 'kind'> & { kind: string }): Signature {
  return {
    id,
    kind: kind === 'signed' ? 'signed' : 'second-look',
    at,
    by,
    note,
  };
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
