import 'server-only';
import { currentReview } from '../reviews/current-review';
import type { StoredSite } from '../reviews/stored-site';
import { type Asked, askedBy } from './asked';
import type { ThingAddress } from './find-thing';

/** What the reviews that stand ask for of a thing: that of its system; for a room, those of the systems in it. */
export async function askedFor(
  siteId: string,
  stored: StoredSite,
  { noun, system, key }: ThingAddress,
): Promise<Asked> {
  const systems = stored.facility.systems.filter((one) =>
    noun === 'room' ? one.room === key : one.key === (noun === 'system' ? key : system),
  );
  const reviews = await Promise.all(systems.map(async (one) => await currentReview(siteId, stored, one.key)));
  return askedBy(reviews.filter((review) => review !== null));
}
