import 'server-only';
import type { Facility } from '#core/facility/facility';
import type { Rota } from '#core/rota/turns';
import { findExceptions } from '#data/rota/exceptions';
import type { Transaction } from '#data/transaction';

/**
 * Who is on when at a site: the shifts as described, after the swaps and leave that were approved.
 *
 * @param sinceMs   the earliest moment that will be asked about, ms
 * @param asker     the transaction to ask in; the client itself when left out
 */
export async function rotaOf(
  siteId: string,
  { people, shifts, site }: Pick<Facility, 'people' | 'shifts' | 'site'>,
  sinceMs: number,
  asker?: Pick<Transaction, '$queryRaw'>,
): Promise<Rota> {
  const found = await findExceptions([siteId], new Date(sinceMs), asker);
  return { people, shifts, site, exceptions: found.get(siteId) ?? [] };
}
