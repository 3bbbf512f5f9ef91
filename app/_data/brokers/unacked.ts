import 'server-only';
import { arrayText, type Asking } from '../readings/asking';
import { pool } from '../pool';
import type { BrokerKey } from './hold';

/** A message that the broker wants acknowledged. */
export interface Unacked {
  packetId: number;
  /** SHA-256 of topic and payload, in hex. */
  digest: string;
}

/**
 * Keeps which messages are stored, in the transaction that stores them: until their acknowledgement is sure to have arrived, the
 * same may be sent again.
 *
 * @param forgetBefore   what was stored before this instant is sure to be acknowledged; null when nothing is
 */
export async function keepUnacked(
  asking: Asking,
  { siteId, sourceId }: BrokerKey,
  messages: readonly Unacked[],
  at: Date,
  forgetBefore: Date | null,
): Promise<void> {
  if (forgetBefore)
    await asking(
      `DELETE FROM broker_unacked WHERE site_id = $1::uuid AND source_id = $2::uuid AND stored_at < $3::timestamptz`,
      [siteId, sourceId, forgetBefore.toISOString()],
    );
  const newest = new Map(messages.map(({ packetId, digest }) => [packetId, digest] as const));
  if (newest.size === 0) return;
  await asking(
    `INSERT INTO broker_unacked (site_id, source_id, packet_id, digest, stored_at)
     SELECT $1::uuid, $2::uuid, u.packet, decode(u.digest, 'hex'), $5::timestamptz
       FROM unnest($3::int4[], $4::text[]) AS u(packet, digest) ORDER BY u.packet
     ON CONFLICT (site_id, source_id, packet_id) DO UPDATE SET digest = EXCLUDED.digest, stored_at = EXCLUDED.stored_at`,
    [siteId, sourceId, arrayText([...newest.keys()]), arrayText([...newest.values()]), at.toISOString()],
  );
}

/** Which of these were stored already and not surely acknowledged, by packet. */
export async function storedBefore(
  { siteId, sourceId }: BrokerKey,
  messages: readonly Unacked[],
): Promise<ReadonlySet<number>> {
  if (messages.length === 0) return new Set();
  const { rows } = await pool().query<{ packet: number }>(
    `SELECT u.packet_id AS packet FROM broker_unacked u
       JOIN unnest($3::int4[], $4::text[]) AS m(packet, digest) ON m.packet = u.packet_id AND decode(m.digest, 'hex') = u.digest
      WHERE u.site_id = $1 AND u.source_id = $2`,
    [siteId, sourceId, messages.map(({ packetId }) => packetId), messages.map(({ digest }) => digest)],
  );
  return new Set(rows.map(({ packet }) => packet));
}
