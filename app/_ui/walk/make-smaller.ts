/** Longest side that is sent, pixels; the other side makes it no larger. */
const LONGEST_PX = 1600;
const QUALITY = 0.8;

/**
 * Makes a photo small before it is kept: a telephone's own is ten times what is needed, and room and line are short.
 *
 * @returns   a JPEG without anything that the camera wrote beside it; null when it is no picture this browser can read
 */
export async function makeSmaller(file: Blob): Promise<Blob | null> {
  try {
    const picture = await createImageBitmap(file, { imageOrientation: 'from-image' });
    const scale = Math.min(1, LONGEST_PX / Math.max(picture.width, picture.height));
    const canvas = document.createElement('canvas');
    canvas.width = Math.max(1, Math.round(picture.width * scale));
    canvas.height = Math.max(1, Math.round(picture.height * scale));
    canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
    picture.close();
    return await new Promise((resolve) => canvas.toBlob(resolve, 'image/jpeg', QUALITY));
  } catch {
    return null;
  }
}
