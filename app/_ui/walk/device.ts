import { CHANCE_BYTES, clientId } from '#core/rounds/client-id';

/**
 * The clock and the chance of a telephone, read here and nowhere else: what is made out of reach can ask nobody for a time or an
 * id.
 */

/** ms since 1970, by the clock of this telephone. */
export function clock(): number {
  return Date.now();
}

/** An id for something that is made here. */
export function newId(): string {
  return clientId(clock(), crypto.getRandomValues(new Uint8Array(CHANCE_BYTES)));
}

const WALKER = 'holdfast-walker';

/** The account that walks with this browser, as far as it knows; null when nobody does, or whoever did has signed out. */
export function walker(): string | null {
  try {
    return localStorage.getItem(WALKER);
  } catch {
    return null;
  }
}

/** Remembers who walks with this browser, or that nobody does any more. */
export function setWalker(account: string | null): void {
  try {
    if (account === null) localStorage.removeItem(WALKER);
    else localStorage.setItem(WALKER, account);
  } catch {
    // A browser that keeps nothing is told of where it matters: when an entry cannot be kept.
  }
}
