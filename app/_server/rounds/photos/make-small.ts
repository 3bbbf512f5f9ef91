import 'server-only';
import sharp from 'sharp';
import { ok, type Result, refused } from '#core/result';

/** A photo as it is kept. */
interface SmallPhoto {
  bytes: Uint8Array<ArrayBuffer>;
  width: number;
  height: number;
}

/** Longest side that is kept, pixels: enough to read a dial or a label. Common practice, no source. */
const LONGEST_PX = 1600;
/** Pixels of a picture that is read at all: a small file can stand for a picture that no memory holds. */
const MOST_PIXELS = 50_000_000;
const QUALITY = 75;
const FORMATS: readonly string[] = ['jpeg', 'png', 'webp'];

/**
 * Makes a photo small, upright and WebP. Nothing is kept of what a camera writes beside the picture: where it was taken, by which
 * device.
 *
 * @param bytes   JPEG, PNG or WebP
 * @returns       the photo; or why it is none
 */
export async function makeSmall(bytes: Uint8Array): Promise<Result<SmallPhoto, string>> {
  try {
    const picture = sharp(bytes, { limitInputPixels: MOST_PIXELS, failOn: 'error' });
    const { format } = await picture.metadata();
    if (!FORMATS.includes(format)) return refused('must be a JPEG, PNG or WebP picture');
    const { data, info } = await picture
      .autoOrient()
      .resize({ width: LONGEST_PX, height: LONGEST_PX, fit: 'inside', withoutEnlargement: true })
      .webp({ quality: QUALITY })
      .toBuffer({ resolveWithObject: true });
    return ok({ bytes: new Uint8Array(data), width: info.width, height: info.height });
  } catch {
    return refused('cannot be read as a picture, or is too large');
  }
}
