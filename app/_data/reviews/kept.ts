import 'server-only';
import { createHash } from 'node:crypto';
import { gunzipSync, gzipSync } from 'node:zlib';
import type { SystemReview } from '#core/review/result';
import type { ReviewSummary } from '#core/review/summary';
import type { Prisma } from '../../../prisma/generated/client';
import { canonicalText } from '../canonical';
import { database } from '../client';
import { asDate, asDay } from '../day';
import { newId } from '../new-id';
import type { Transaction } from '../transaction';
import type { ReviewMark } from './results';

/** A kept review in short. */
export interface KeptReview extends ReviewMark {
  id: string;
  summary: ReviewSummary;
}

/**
 * Keeps a review for good, unless it says just what the last kept one of its system says.
 *
 * @param mark      of the review
 * @param review    without names of persons
 * @param summary   its short form
 * @returns         whether it was kept
 */
export async function keepReview(
  tx: Transaction,
  siteId: string,
  { systemId, judgedOn, ...mark }: ReviewMark,
  review: SystemReview,
  summary: ReviewSummary,
): Promise<boolean> {
  const text = canonicalText(review);
  const contentHash = createHash('sha256').update(text).digest();
  const last = await tx.reviewKept.findFirst({
    where: { siteId, systemId },
    orderBy: [{ computedAt: 'desc' }, { id: 'desc' }],
    select: { contentHash: true },
  });
  if (last && contentHash.equals(last.contentHash)) return false;
  await tx.reviewKept.create({
    data: {
      siteId,
      id: newId(),
      systemId,
      ...mark,
      judgedOn: asDate(judgedOn),
      contentHash,
      summary: summary as unknown as Prisma.InputJsonObject,
      body: gzipSync(text),
    },
  });
  return true;
}

/**
 * The kept reviews of a system, newest first.
 *
 * @param limit   at most so many
 */
export async function listKept(siteId: string, systemId: string, limit: number): Promise<KeptReview[]> {
  const rows = await database().reviewKept.findMany({
    where: { siteId, systemId },
    orderBy: [{ computedAt: 'desc' }, { id: 'desc' }],
    take: limit,
    omit: { siteId: true, body: true, contentHash: true },
  });
  return rows.map(({ judgedOn, summary, ...mark }) => ({
    ...mark,
    judgedOn: asDay(judgedOn),
    summary: summary as unknown as ReviewSummary,
  }));
}

/** A kept review of a system, by its id; null when there is none. It was written by the engine version that it names. */
export async function findKept(
  siteId: string,
  systemId: string,
  id: string,
): Promise<(ReviewMark & { id: string; review: SystemReview }) | null> {
  const row = await database().reviewKept.findFirst({
    where: { siteId, systemId, id },
    omit: { siteId: true, summary: true, contentHash: true },
  });
  if (!row) return null;
  const { body, judgedOn, ...mark } = row;
  return { ...mark, judgedOn: asDay(judgedOn), review: JSON.parse(gunzipSync(body).toString()) as SystemReview };
}
