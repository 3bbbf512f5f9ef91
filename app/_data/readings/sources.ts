import 'server-only';
import { database } from '../client';
import { newId } from '../new-id';
import { pool } from '../pool';
import type { Transaction } from '../transaction';
import { SIGNS, type SiteSigns } from './taking-in';
import { hashOf, newToken } from '../accounts/token';

/** A source of readings, as it is listed. Its token is not kept. */
export interface SourceRow {
  id: string;
  name: string;
  gatewayId: string | null;
  createdAt: Date;
  /** Account, or `local`. */
  createdBy: string;
  endedAt: Date | null;
  usedAt: Date | null;
  /** Whether it is a broker that is subscribed to. */
  isBroker: boolean;
}

/** ms within which using a source again is not noted again. */
const NOTED_EVERY_MS = 60_000;
/** The site stands in the token, so that it is looked up by site like everything else. */
const TOKEN = /^hfr_([0-9a-f]{32})_[\w-]{43}$/;

/**
 * Makes a source.
 *
 * @returns   its id, and its token, which is not kept
 */
export async function makeSource(
  tx: Transaction,
  siteId: string,
  source: { name: string; gatewayId: string | null },
  by: string,
  at: Date,
): Promise<{ id: string; token: string }> {
  const id = newId();
  const token = `hfr_${siteId.replaceAll('-', '')}_${newToken()}`;
  await tx.readingSource.create({
    data: { siteId, id, ...source, tokenHash: hashOf(token), createdAt: at, createdBy: by },
  });
  return { id, token };
}

/** A source that sends, and the signs of its site, which whoever takes in what it sends asks for next. */
export interface SendingSource {
  siteId: string;
  id: string;
  usedAt: Date | null;
  signs: SiteSigns;
}

const LIVING_SOURCE = `
  SELECT r.site_id AS "siteId", r.id, r.used_at AS "usedAt", ${SIGNS}
    FROM reading_source r JOIN site s ON s.id = r.site_id
   WHERE r.site_id = $1 AND r.token_hash = $2 AND r.ended_at IS NULL`;

/** The source whose token this is, while it lives; null for any other text. */
export async function findSource(token: string): Promise<SendingSource | null> {
  const site = TOKEN.exec(token)?.[1];
  if (site === undefined) return null;
  const siteId = site.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
  // Asked at every body that comes: by the driver itself it costs a tenth of what it does through Prisma.
  const { rows } = await pool().query<Omit<SendingSource, 'signs'> & SiteSigns>({
    name: 'find-source',
    text: LIVING_SOURCE,
    values: [siteId, hashOf(token)],
  });
  if (!rows[0]) return null;
  const { print, keptFrom, ...source } = rows[0];
  return { ...source, signs: { print, keptFrom } };
}

/** Notes that a source was used; once a minute is enough. */
export async function noteUse(source: Omit<SendingSource, 'signs'>, at: Date): Promise<void> {
  if (source.usedAt && at.getTime() - source.usedAt.getTime() < NOTED_EVERY_MS) return;
  const { siteId, id } = source;
  await database().readingSource.updateMany({ where: { siteId, id }, data: { usedAt: at } });
}

/** Every source of a site, those that live first, the newest first. */
export async function listSources(siteId: string): Promise<SourceRow[]> {
  const rows = await database().readingSource.findMany({
    where: { siteId },
    omit: { siteId: true },
    orderBy: [{ endedAt: { sort: 'desc', nulls: 'first' } }, { id: 'desc' }],
  });
  return rows.map(({ tokenHash, ...row }) => ({ ...row, isBroker: tokenHash === null }));
}

/** Ends a source: its token opens nothing from then on. @returns whether it lived until now */
export async function endSource(tx: Transaction, siteId: string, id: string, at: Date): Promise<boolean> {
  const { count } = await tx.readingSource.updateMany({ where: { siteId, id, endedAt: null }, data: { endedAt: at } });
  return count > 0;
}
