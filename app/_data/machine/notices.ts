import 'server-only';
import { database } from '../client';

/**
 * Takes it upon the caller to send a notice, unless it was sent since `since` or somebody else is at it.
 *
 * @param notice   what it is about
 * @param at       the instant
 * @param since    no notice of the same thing may have been sent after this
 * @returns        whether the caller is to send it
 */
export async function claimNotice(notice: string, at: Date, since: Date): Promise<boolean> {
  const claimed = await database().$executeRaw`
    INSERT INTO notice_sent (notice, sent_at) VALUES (${notice}, ${at.toISOString()}::timestamptz)
        ON CONFLICT (notice) DO UPDATE SET sent_at = excluded.sent_at
     WHERE notice_sent.sent_at <= ${since.toISOString()}::timestamptz`;
  return claimed === 1;
}

/** Says that a claimed notice could not be sent; it may be tried again once `sentAt` is long enough ago. */
export async function releaseNotice(notice: string, sentAt: Date): Promise<void> {
  await database().noticeSent.update({ where: { notice }, data: { sentAt } });
}
