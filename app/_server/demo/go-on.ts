import 'server-only';
import { loadedDemoSites, toldAgain } from '#data/demo/going-on';
import { storeReadings } from '#data/readings/store-readings';

const MINUTE_MS = 60_000;

/**
 * Lets the gateways of the demonstration's sites tell what is due in the last whole minute, so that they do not fall silent
 * once it is loaded: it is judged as what real ones send. Minutes that nobody ran for stay empty; the same minute again
 * changes nothing. A site of somebody's own is never touched.
 *
 * @param at   the present
 * @returns    readings that were new
 */
export async function goOn(at: Date): Promise<number> {
  const to = new Date(Math.floor(at.getTime() / MINUTE_MS) * MINUTE_MS);
  const from = new Date(to.getTime() - MINUTE_MS);
  let stored = 0;
  for (const { siteId, loadedAt } of await loadedDemoSites()) {
    if (to <= loadedAt) continue;
    const readings = await toldAgain(siteId, loadedAt, from, to);
    const outcomes = await storeReadings(siteId, readings, { receivedAt: at });
    stored += outcomes.filter((outcome) => outcome === 'stored').length;
  }
  return stored;
}
