import 'server-only';
import { database } from '../client';

/** The gateways of a site, by name; also those that are there no longer, whose sources may have stayed. */
export async function gatewaysOf(
  siteId: string,
): Promise<{ id: string; key: string; name: string; isLiving: boolean }[]> {
  const rows = await database().monitor.findMany({
    where: { siteId, kind: 'gateway' },
    select: { id: true, key: true, name: true, retiredAt: true },
    orderBy: [{ name: 'asc' }, { key: 'asc' }],
  });
  return rows.map(({ retiredAt, ...row }) => ({ ...row, isLiving: retiredAt === null }));
}
