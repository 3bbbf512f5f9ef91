import 'server-only';
import type { Role } from '#core/rota/rota';
import { database } from '../client';
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

/** The signatures of a round, in order. */
export async function listSignatures(
  siteId: string,
  roundId: string,
  asker: Pick<Transaction, 'roundSignature'> = database(),
): Promise<Signature[]> {
  const rows = await asker.roundSignature.findMany({ where: { siteId, roundId }, orderBy: [{ at: 'asc' }] });
  return rows.map(({ id, kind, at, by, note }) => ({
    id,
    kind: KINDS.find((one) => one === kind) ?? 'second-look',
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
