import 'server-only';
import { ok, type Result, refused } from '#core/result';
import { findPhoto } from '#data/rounds/photos';
import { type PhotoAddress, photoAddress } from '#shape/rounds/sync';
import type { Refusal } from '../../gate/refusal';
import { siteFor } from '../../gate/site-for';
import type { Who } from '../../gate/who';

export const showPhotoShape = photoAddress;

/** A photo of an entry, as WebP. */
export async function showPhoto(
  who: Who,
  { site: key, photo }: PhotoAddress,
): Promise<Result<Uint8Array<ArrayBuffer>, Refusal>> {
  const site = await siteFor(who, 'see', key);
  if (!site.ok) return site;
  const found = await findPhoto(site.value.id, photo);
  return found ? ok(found.bytes) : refused({ why: 'not-found', what: 'entry' });
}
