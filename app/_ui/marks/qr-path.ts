import { encode } from 'uqr';

/** A QR code (ISO/IEC 18004) as a line drawing. */
export interface QrPath {
  /** Modules a side, with the four that have to be clear all round. */
  size: number;
  /** The dark modules, as the path of an SVG in modules. */
  path: string;
}

/** Modules that have to be clear on each side. */
const CLEAR = 4;

/**
 * Draws a text as a QR code that bears a seventh of it hidden or dirty (level M).
 *
 * @param text   such as an address; at most some 2,300 bytes
 */
export function qrPath(text: string): QrPath {
  const { data, size } = encode(text, { ecc: 'M', border: CLEAR });
  const dark = data.flatMap((row, y) => row.flatMap((isDark, x) => (isDark ? [`M${x} ${y}h1v1h-1z`] : [])));
  return { size, path: dark.join('') };
}
