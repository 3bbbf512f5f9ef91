import 'server-only';
import type { ItemAnswer } from '#core/rounds/outbox';
import { ok, type Result, refused } from '#core/result';
import { news } from '#data/news';
import { appendRecords } from '#data/records/append-records';
import { isEntryElsewhere } from '#data/rounds/entries';
import { addPhoto, countPhotos, findPhoto } from '#data/rounds/photos';
import { holdSite } from '#data/sites';
import { inTransaction } from '#data/transaction';
import { type PhotoRequest, photoRequest } from '#shape/rounds/sync';
import { now } from '../../clock';
import type { Refusal } from '../../gate/refusal';
import { siteFor } from '../../gate/site-for';
import type { Who } from '../../gate/who';
import { makeSmall } from './make-small';

export const takePhotoShape = photoRequest;

/** Photos that one entry may have. */
const MOST = 12;

/** Takes in a photo of an entry that is there already. What was sent twice is kept once. */
export async function takePhoto(who: Who, sent: PhotoRequest): Promise<Result<ItemAnswer, Refusal>> {
  const found = await siteFor(who, 'walk', sent.site);
  if (!found.ok) return found;
  const site = found.value;
  const small = await makeSmall(sent.body);
  if (!small.ok) return refused({ why: 'invalid', faults: [{ path: 'photo', message: small.reason }] });
  const at = now();
  const takenAt = new Date(Math.min(Date.parse(sent.takenAt), at.getTime()));
  return await inTransaction(async (tx) => {
    await holdSite(tx, site, at);
    const there = await findPhoto(site.id, sent.photo, tx);
    if (there)
      return there.entryId === sent.entry
        ? ok({ id: sent.photo, outcome: 'repeat' })
        : refused({ why: 'conflict', now: 'This photo belongs to another entry.' });
    if (!(await isEntryElsewhere(tx, site.id, sent.entry))) return refused({ why: 'not-found', what: 'entry' });
    if ((await countPhotos(tx, site.id, sent.entry)) >= MOST)
      return refused({ why: 'conflict', now: `An entry has at most ${MOST} photos.` });
    const photo = { id: sent.photo, entryId: sent.entry, takenAt, recordedAt: at, by: who.id, ...small.value };
    await addPhoto(tx, site.id, photo);
    const body = { by: who.id, entry: sent.entry, photo: sent.photo };
    await appendRecords(tx, site.id, [{ kind: 'round-photo', body }], at);
    await news(tx, site.id, 'rounds');
    return ok({ id: sent.photo, outcome: 'stored' });
  });
}
