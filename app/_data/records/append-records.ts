import 'server-only';
import type { Prisma } from '../../../prisma/generated/client';
import type { Transaction } from '../transaction';
import { NO_SEAL, type RecordEntry, seal } from './seal';

/**
 * Adds to the record of a site, in the transaction of the change that is recorded: both are kept or neither. The last
 * link is held until the transaction ends, so that whoever adds next waits and links to what was added here.
 *
 * @param entries   what happened, in order
 * @param at        the instant
 * @returns         number of the last link
 */
export async function appendRecords(
  tx: Transaction,
  siteId: string,
  entries: readonly RecordEntry[],
  at: Date,
): Promise<number> {
  return await append(
    tx,
    siteId,
    entries.map((entry) => ({ ...entry, at })),
  );
}

/**
 * Adds what happened over a long time to the record of a site that is told as if it had always been kept here: a site of
 * the demonstration. Of any other, what happened is recorded when it does.
 *
 * @param entries   what happened and when, in order of time
 * @returns         number of the last link
 * @throws          when they are not in order, or reach back before what is recorded already
 */
export async function appendPast(
  tx: Transaction,
  siteId: string,
  entries: readonly (RecordEntry & { at: Date })[],
): Promise<number> {
  const last = await tx.record.findFirst({ where: { siteId }, orderBy: { seq: 'desc' }, select: { at: true } });
  let before = last?.at ?? null;
  for (const { at, kind } of entries) {
    if (before !== null && at < before) throw new Error(`${kind} of ${at.toISOString()} comes after what was later`);
    before = at;
  }
  return await append(tx, siteId, entries);
}

async function append(
  tx: Transaction,
  siteId: string,
  entries: readonly (RecordEntry & { at: Date })[],
): Promise<number> {
  const head = await holdHead(tx, siteId);
  let { seq } = head;
  let before = head.hash;
  const data = entries.map(({ kind, body, at }) => {
    seq += 1;
    const hash = seal(before, { siteId, seq, at, kind, body });
    const row = { siteId, seq, at, kind, body: body as Prisma.InputJsonObject, prevHash: before, hash };
    before = hash;
    return row;
  });
  await tx.record.createMany({ data });
  await tx.recordHead.update({ where: { siteId }, data: { seq, hash: before } });
  return seq;
}

async function holdHead(tx: Transaction, siteId: string): Promise<{ seq: number; hash: Uint8Array<ArrayBuffer> }> {
  await tx.$executeRaw`
    INSERT INTO record_head (site_id, seq, hash) VALUES (${siteId}::uuid, 0, ${NO_SEAL}) ON CONFLICT (site_id) DO NOTHING`;
  const [head] = await tx.$queryRaw<{ seq: number; hash: Uint8Array<ArrayBuffer> }[]>`
    SELECT seq, hash FROM record_head WHERE site_id = ${siteId}::uuid FOR UPDATE`;
  if (!head) throw new Error(`The record of site ${siteId} has no head`);
  return head;
}
