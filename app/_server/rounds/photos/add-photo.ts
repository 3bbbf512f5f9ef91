import 'server-only';
import { ok, type Result, refused } from '#core/result';
import { enterRequest, type RoundAddress } from '#shape/rounds/requests';
import { type PhotoForm, photoForm } from '#shape/rounds/sync';
import { now } from '../../clock';
import type { Refusal } from '../../gate/refusal';
import { siteFor } from '../../gate/site-for';
import type { Who } from '../../gate/who';
import { enter } from '../enter';
import { makeSmall } from './make-small';
import { takePhoto } from './take-photo';

export const addPhotoShape = photoForm;

/**
 * Adds a photo to an entry from the page of a round. Where a photo is what the line asks for it is the entry itself, which is
 * made only of what can be read as a picture.
 */
export async function addPhotoTo(who: Who, typed: PhotoForm): Promise<Result<RoundAddress, Refusal>> {
  const { site, round, check, entry, photo, first, picture } = typed;
  const found = await siteFor(who, 'walk', site);
  if (!found.ok) return found;
  if (first) {
    const small = await makeSmall(picture.bytes);
    if (!small.ok) return refused({ why: 'invalid', faults: [{ path: 'picture', message: small.reason }] });
    const entered = await enter(who, enterRequest.parse({ site, round, check, entry, photos: photo }));
    if (!entered.ok) return entered;
  }
  const taken = await takePhoto(who, { site, photo, entry, takenAt: now().toISOString(), body: picture.bytes });
  return taken.ok ? ok({ site, round }) : taken;
}
