import 'server-only';
import type { SignedByTwo } from '#core/states/signing';
import { database } from '../client';
import { type TakenBack, takenBack } from '../taken-back';
import type { Transaction } from '../transaction';

/** Something somebody did that a second person has to look at. */
export interface SignatureAsked {
  id: string;
  systemId: string | null;
  kind: SignedByTwo;
  about: string;
  at: Date;
  by: string;
  note: string | null;
}

/** The same with what the second person said; null while nobody has. */
export interface SignatureRow extends SignatureAsked {
  given: { at: Date; by: string; isRight: boolean; note: string } | null;
  /** Of one that was given: that it was taken back, and wants another. */
  taken: TakenBack | null;
}

/** Roles that may walk a round may sign. */
const SIGNERS = ['aquarist', 'lead', 'manager', 'admin'];

/** How many others there are who could sign what somebody did. */
export async function countSigners(tx: Transaction, siteId: string, but: string): Promise<number> {
  const [row] = await tx.$queryRaw<{ count: number }[]>`
    SELECT count(*)::int AS count FROM account a
      LEFT JOIN membership m ON m.account_id = a.id AND m.site_id = ${siteId}::uuid AND m.ended_at IS NULL
     WHERE a.ended_at IS NULL AND a.id::text <> ${but} AND coalesce(m.role, a.everywhere) = ANY(${SIGNERS}::text[])`;
  return row?.count ?? 0;
}

/** Asks for a second signature. */
export async function askSignature(tx: Transaction, siteId: string, asked: SignatureAsked): Promise<void> {
  await tx.signatureAsked.create({ data: { siteId, ...asked } });
}

/** Gives one. @throws when it is that of whoever did it, or was given already */
export async function giveSignature(
  tx: Transaction,
  siteId: string,
  askedId: string,
  given: NonNullable<SignatureRow['given']>,
): Promise<void> {
  await tx.signatureGiven.create({ data: { siteId, askedId, ...given } });
}

/** A second signature that was asked for, by its id. */
export async function findSignature(tx: Transaction, siteId: string, id: string): Promise<SignatureRow | null> {
  const row = await tx.signatureAsked.findUnique({ where: { siteId_id: { siteId, id } }, include: { given: true } });
  return row && asRow(row, new Map());
}

/** Those that nobody has given yet, or that were given since an instant, the oldest first. */
export async function openSignatures(siteId: string, since: Date): Promise<SignatureRow[]> {
  const rows = await database().signatureAsked.findMany({
    where: { siteId, OR: [{ given: null }, { given: { at: { gte: since } } }] },
    include: { given: true },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
  });
  const taken = await takenBack(
    siteId,
    'second-signature',
    rows.flatMap(({ id, given }) => (given ? [id] : [])),
  );
  return rows.map((row) => asRow(row, taken));
}

type Kept = Omit<SignatureRow, 'kind' | 'taken'> & { siteId: string; kind: string };

function asRow({ siteId: _, kind, given, ...row }: Kept, taken: ReadonlyMap<string, TakenBack>): SignatureRow {
  const { at, by, isRight, note } = given ?? {};
  const isGiven = at !== undefined && by !== undefined && isRight !== undefined && note !== undefined;
  return {
    ...row,
    kind: kind as SignedByTwo,
    given: isGiven ? { at, by, isRight, note } : null,
    taken: taken.get(row.id) ?? null,
  };
}
