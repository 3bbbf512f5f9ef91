import 'server-only';
import type { Role } from '#core/rota/rota';
import { database } from '../client';
import { type TakenBack, takenBack } from '../taken-back';
import type { Transaction } from '../transaction';

const KINDS = ['signed', 'second', 'second-look'] as const;

/** Who signed a round, signed it as the second, or looked at it again. */
export interface Signature {
  id: string;
  kind: (typeof KINDS)[number];
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
    kind: KINDS.find((one) => one === kind) ?? 'second-look',
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

/** Whether an account has one of some roles at a site, there or everywhere. */
export async function hasRole(
  tx: Pick<Transaction, '$queryRaw'>,
  siteId: string,
  account: string,
  roles: readonly Role[],
): Promise<boolean> {
  const found = await tx.$queryRaw<unknown[]>`
    SELECT 1 FROM account a
      LEFT JOIN membership m ON m.account_id = a.id AND m.site_id = ${siteId}::uuid AND m.ended_at IS NULL
     WHERE a.id::text = ${account} AND coalesce(m.role, a.everywhere) = ANY (${[...roles]}::text[])`;
  return found.length > 0;
}
