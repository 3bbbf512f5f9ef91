import 'server-only';
import { anchorsOf, keepAnchor, unsentAnchors } from '#data/records/anchors';
import { noteCheck } from '#data/records/checks';
import { sealAt } from '#data/records/seal-at';
import { listRecordedSites, type SiteEntry } from '#data/sites';
import { inTransaction } from '#data/transaction';
import { wake } from '#data/wake';
import { dayIn } from '../local-day';
import { logError } from '../log';
import { anchorPlaces } from './anchor-places';
import { checkRecord } from './check-record';

/**
 * Goes through the record of every site that has no anchor of this day yet, keeps one where the record is whole, and has
 * what is not sent yet sent to each place. A broken record gets no anchor, for that would vouch for it: it is logged,
 * and shown to those who manage the site.
 *
 * @param instant   the present one
 */
export async function anchorRecords(instant: Date): Promise<void> {
  const day = dayIn('UTC', instant);
  for (const site of await listRecordedSites()) await anchorSite(site, day, instant);
  for (const { place } of anchorPlaces()) {
    const isDue = (await unsentAnchors(day, place)).length > 0;
    if (isDue) await inTransaction((tx) => wake(tx, 'send-anchor', { place }, { key: `send-anchor:${place}` }));
  }
}

async function anchorSite({ id, key }: SiteEntry, day: string, instant: Date): Promise<void> {
  const [last] = await anchorsOf(id, 1);
  if (last?.day === day) return;
  const verdict = await checkRecord(id);
  await noteCheck(id, verdict, instant);
  if (!verdict.isWhole) {
    logError('record broken', verdict.wrong, { site: key, link: verdict.seq });
    return;
  }
  const seal = await sealAt(id, verdict.links);
  if (seal !== null) await keepAnchor({ siteId: id, day, seq: verdict.links, seal, at: instant });
}
