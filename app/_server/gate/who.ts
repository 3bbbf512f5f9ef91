import 'server-only';
import type { Role } from '#core/rota/rota';
import { LOCAL, LOCAL_NAME } from '#data/accounts/names';
import { findLiveSession } from '#data/accounts/sessions';
import { now } from '../clock';
import { visitOf } from './visit';

/** Who asks, and with which role at which site. */
export interface Who {
  /** Stands in the record for the person; never their name. */
  id: string;
  /** What to call them on screen. */
  name: string;
  /** Role at every site that `at` does not name; null: none. */
  everywhere: Role | null;
  /** Roles by key of the site. */
  at: Readonly<Record<string, Role>>;
  /** The session they came with; none for a command. */
  session?: string;
}

/** Whoever sits at the machine with its command line. The web never takes anybody for them. */
export const LOCAL_PERSON: Who = { id: LOCAL, name: LOCAL_NAME, everywhere: 'admin', at: {} };

/**
 * Who sent a request, by its session cookie: asked of the database each time, so that what was ended is ended.
 *
 * @param headers   of the request
 * @returns         null when the cookie leads to no session, or the request was made by a name that is not ours
 */
export async function whoAsks(headers: Pick<Headers, 'get'>): Promise<Who | null> {
  const token = visitOf(headers)?.token ?? null;
  const found = token === null ? null : await findLiveSession(token, now());
  if (!found) return null;
  const { id, accountId, name, everywhere, at } = found;
  return { id: accountId, name, everywhere, at, session: id };
}

const asked = new WeakMap<object, Promise<Who | null>>();

/**
 * The same for a page and its frame, which ask several things of one request within a moment: the database is asked once.
 *
 * @param headers   of the request: the same object each time
 */
export function whoAsksOnce(headers: Pick<Headers, 'get'>): Promise<Who | null> {
  const known = asked.get(headers) ?? whoAsks(headers);
  asked.set(headers, known);
  return known;
}

/** Forgets who a request was found to be from: something was done in it, and its page is drawn anew after that. */
export function askAnew(headers: object): void {
  asked.delete(headers);
}
