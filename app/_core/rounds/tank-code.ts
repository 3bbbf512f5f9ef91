import type { SheetPlace } from './sheet';

/**
 * Digits of a code: Crockford's base 32 without its check symbols, which leaves out I, L, O and U, so that nothing is read as
 * something else (Douglas Crockford, "Base 32", https://www.crockford.com/base32.html).
 */
const DIGITS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
const LENGTH = 6;
const BITS = 5;

/**
 * The code on the label of a tank, which somebody can type: the same for as long as the keys of the tank and its system are.
 * Thirty bits: of five hundred tanks two share one about once in ten thousand sites, and then both are offered.
 *
 * @param system   key of the system
 * @param tank     key of the tank
 */
export function tankCode(system: string, tank: string): string {
  let rest = hash(`${system}/${tank}`) & 0x3fffffff;
  let code = '';
  for (let at = 0; at < LENGTH; at++) {
    code = DIGITS.charAt(rest & 31) + code;
    rest >>>= BITS;
  }
  return code;
}

/** A code as somebody typed it: small letters are as good as large ones, and what looks like a digit is one. */
export function typedCode(text: string): string {
  return text
    .toUpperCase()
    .replace(/[^0-9A-Z]/g, '')
    .replaceAll('O', '0')
    .replace(/[IL]/g, '1');
}

/** Numbers, from 1, of the places of a sheet where the tank with this code stands. */
export function placesOfCode(places: readonly SheetPlace[], code: string): number[] {
  return places.flatMap(({ checks }, index) =>
    checks.some(
      ({ about }) => about.noun === 'tank' && about.system !== null && tankCode(about.system, about.key) === code,
    )
      ? [index + 1]
      : [],
  );
}

/** FNV-1a, 32 bits (Fowler, Noll, Vo; RFC 9923), over UTF-16 code units of which each is a byte or two. */
function hash(text: string): number {
  let value = 0x811c9dc5;
  for (const letter of text) {
    value ^= letter.codePointAt(0) ?? 0;
    value = Math.imul(value, 0x01000193);
  }
  return value >>> 0;
}
