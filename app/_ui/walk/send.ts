import { afterAnswer, nextBatch, waiting } from '#core/rounds/outbox';
import { readAll, store, type Whose } from './store';
import { sendItems, sendPhoto, type Unanswered } from './wire';

/** Things that are sent at once. */
const AT_ONCE = 20;
const LOCK = 'holdfast-walk-send';

/** How sending ended: all that waited has been answered, or why not. */
export type Ended = { why: 'done' } | { why: Unanswered; said: string };

/**
 * Sends what waits, the oldest first, and then the photos of what has arrived. Whatever breaks off in between is sent again: the
 * other side keeps each once. Of several open pages one sends at a time.
 */
export async function sendWaiting(whose: Whose): Promise<Ended> {
  if (!('locks' in navigator)) return await send(whose);
  return await navigator.locks.request(LOCK, async () => await send(whose));
}

async function send(whose: Whose): Promise<Ended> {
  for (;;) {
    const { items } = await readAll(whose);
    const batch = nextBatch(items, AT_ONCE);
    if (batch.length === 0) return await sendPhotos(whose);
    const answer = await sendItems(whose, batch);
    if (!answer.ok) return answer;
    const after = afterAnswer(batch, answer.value.answers);
    // An answer that names none of them would be asked for without end.
    if (waiting(after).length === batch.length) return { why: 'unreached', said: 'Holdfast gave no answer to these.' };
    await store().items.bulkPut(after);
  }
}

async function sendPhotos(whose: Whose): Promise<Ended> {
  const { items, photos } = await readAll(whose);
  const kept = (entry: string) => items.every(({ id, state }) => id !== entry || state === 'kept');
  for (const photo of photos.filter(({ entry, state }) => state === 'waiting' && kept(entry))) {
    const answer = await sendPhoto(photo);
    if (answer.ok) await store().photos.delete(photo.id);
    else if (answer.why === 'refused') await store().photos.update(photo.id, { state: 'refused', said: answer.said });
    else return answer;
  }
  return { why: 'done' };
}
