import 'server-only';
import { findSiteById } from '#data/sites';
import { now } from '../clock';
import { dayIn } from '../local-day';
import { type StoredSite, storedSite } from './stored-site';

/** A run over the systems of a site: of its reviews, or of its longer looks. */
export interface Begun {
  siteId: string;
  runId: string;
  /** The day at the site on which tests are judged, ISO date. */
  on: string;
  stored: StoredSite;
}

/**
 * Opens a run of a site, and reads only then what is described: a run that was at work until that moment can keep nothing more.
 *
 * @param open   opens it on that day
 * @returns      null where the site is no more
 */
export async function beginRun(siteId: string, open: (on: string) => Promise<string>): Promise<Begun | null> {
  const registered = await findSiteById(siteId);
  if (!registered) return null;
  const on = dayIn(registered.zone, now());
  const runId = await open(on);
  const entry = await findSiteById(siteId);
  const stored = entry && (await storedSite(entry, on));
  return stored ? { siteId, runId, on, stored } : null;
}

/** ms between two signs of a run, at least. */
const SIGN_EVERY_MS = 1000;

/** Tells how far something is, but not more than once a second. */
export function nowAndThen(tell: (done: number, of: number) => void): (done: number, of: number) => void {
  let toldAt = now().getTime();
  return (done, of) => {
    if (now().getTime() - toldAt < SIGN_EVERY_MS) return;
    toldAt = now().getTime();
    tell(done, of);
  };
}
