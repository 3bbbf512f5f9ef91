import 'server-only';
import type { Role } from '#core/rota/rota';

/** Who asks, and with which role at which site. */
export interface Who {
  /** Stands in the record for the person; never their name. */
  id: string;
  /** Role at every site that `at` does not name; null: none. */
  everywhere: Role | null;
  /** Roles by key of the site. */
  at: Readonly<Record<string, Role>>;
}

/** Names by which a machine calls itself. */
const LOOPBACK = new Set(['localhost', '127.0.0.1', '[::1]']);

/** Whoever sits at the machine, as long as nobody can sign in: the server listens to this machine alone. */
export const LOCAL_PERSON: Who = { id: 'local', everywhere: 'admin', at: {} };

/**
 * Who sent a request. A page elsewhere that gives its own name this machine's address is not taken for the person here.
 *
 * @param headers   of the request
 * @returns         the one local person, or null when the request was not made to this machine by its own name
 */
export async function whoAsks(headers: Pick<Headers, 'get'>): Promise<Who | null> {
  const host = headers.get('host') ?? '';
  return LOOPBACK.has(host.replace(/:\d+$/, '').toLowerCase()) ? LOCAL_PERSON : null;
}
