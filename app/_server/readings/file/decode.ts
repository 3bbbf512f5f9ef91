import 'server-only';
import type { Encoding } from '#core/readings/file/layout';

/** Bytes looked at to tell UTF-16 by its empty halves. */
const LOOKED_AT = 2000;

/**
 * The letters of a file, and how they were written: by its byte order mark, else by what its bytes allow. What is no UTF-8
 * is taken for windows-1252, in which every byte is a letter.
 *
 * @param asked   the encoding, when somebody said it
 */
export function decode(bytes: Uint8Array, asked?: Encoding): { text: string; encoding: Encoding } {
  const encoding = asked ?? encodingOf(bytes);
  return { text: new TextDecoder(encoding).decode(bytes), encoding };
}

function encodingOf(bytes: Uint8Array): Encoding {
  const [a, b, c] = bytes;
  if (a === 0xef && b === 0xbb && c === 0xbf) return 'utf-8';
  if (a === 0xff && b === 0xfe) return 'utf-16le';
  if (a === 0xfe && b === 0xff) return 'utf-16be';
  const looked = bytes.subarray(0, LOOKED_AT);
  // Of Latin letters in UTF-16 every other byte is 0, and of no other encoding any.
  const empty = (odd: number) => looked.filter((byte, i) => i % 2 === odd && byte === 0).length;
  if (empty(1) > looked.length / 4) return 'utf-16le';
  if (empty(0) > looked.length / 4) return 'utf-16be';
  return isUtf8(bytes) ? 'utf-8' : 'windows-1252';
}

function isUtf8(bytes: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return true;
  } catch {
    return false;
  }
}
