import 'server-only';
import { type AnchorPlaceName, noteSent, unsentAnchors } from '#data/records/anchors';
import { writeAnchor } from '#shape/record/anchor';
import { dayIn } from '../local-day';
import { logInfo } from '../log';
import { anchorPlaces } from './anchor-places';

/**
 * Sends the anchors of the day that have not reached a place to it, and notes that they did. One that is broken off in
 * between is sent again: twice is harmless, never is not.
 *
 * @param name      the place
 * @param instant   the present one
 * @throws          when the place does not take them
 */
export async function sendAnchors(name: AnchorPlaceName, instant: Date): Promise<void> {
  const place = anchorPlaces().find((configured) => configured.place === name);
  const day = dayIn('UTC', instant);
  const anchors = place ? await unsentAnchors(day, name) : [];
  if (!place || anchors.length === 0) return;
  const lines = anchors.map(({ siteId, seq, seal, at }) =>
    writeAnchor({ site: siteId, seq, seal, at: at.toISOString() }),
  );
  await place.send(lines.join(''), day);
  await noteSent(anchors, { place: name, target: place.target, sentAt: instant });
  logInfo('anchors sent', { place: name, anchors: anchors.length });
}
