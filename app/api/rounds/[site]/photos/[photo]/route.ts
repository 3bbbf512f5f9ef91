import { handle } from '#server/gate/handle';
import { handleSent } from '#server/gate/handle-sent';
import { showPhoto, showPhotoShape } from '#server/rounds/photos/show-photo';
import { takePhoto, takePhotoShape } from '#server/rounds/photos/take-photo';

export const dynamic = 'force-dynamic';

/** A photo of an entry. */
export const GET = handle(
  showPhotoShape,
  showPhoto,
  (bytes) => new Response(bytes, { headers: { 'content-type': 'image/webp' } }),
);

/** A photo that was taken on a round. */
export const PUT = handleSent(takePhotoShape, takePhoto, 'bytes');
