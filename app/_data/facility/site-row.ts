import 'server-only';
import type { Transaction } from '../transaction';
import type { FacilityForm } from './form';

/** @returns whether the site's own description is other than before */
export async function saveSite(tx: Transaction, siteId: string, site: FacilityForm['site']): Promise<boolean> {
  const { key: _told, name, zone, ...detail } = site;
  const changed = await tx.$executeRaw`
    UPDATE site SET name = ${name}, zone = ${zone}, detail = ${JSON.stringify(detail)}::jsonb
     WHERE id = ${siteId}::uuid AND (name, zone, detail) IS DISTINCT FROM (${name}, ${zone}, ${JSON.stringify(detail)}::jsonb)`;
  return changed > 0;
}
