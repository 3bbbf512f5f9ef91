import type { Role } from '#core/rota/rota';
import { newId } from '#data/new-id';
import type { Who } from '#server/gate/who';
import type { Copy } from './database';

/** Makes accounts with a role at a site, as they stand after somebody was let in. */
export async function letIn(
  query: Copy['query'],
  siteId: string,
  siteKey: string,
  name: string,
  role: Role,
): Promise<Who> {
  const id = newId();
  await query('INSERT INTO account (id, email, name, created_at) VALUES ($1, $2, $3, now())', [
    id,
    `${name.toLowerCase()}@example.org`,
    name,
  ]);
  await query('INSERT INTO membership (site_id, account_id, role, since) VALUES ($1, $2, $3, now())', [
    siteId,
    id,
    role,
  ]);
  return { id, name, everywhere: null, at: { [siteKey]: role } };
}
