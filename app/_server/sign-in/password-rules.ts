import 'server-only';
import { ZxcvbnFactory } from '@zxcvbn-ts/core';
import { adjacencyGraphs, dictionary } from '@zxcvbn-ts/language-common';

/** Characters at least, since a password is the only thing asked for (NIST SP 800-63B-4, 3.1.1.2). */
const SHORTEST = 15;
/** Characters at most; the standard asks that 64 be allowed. */
const LONGEST = 200;
/** Characters looked at for words and patterns: what follows can only add to it, and looking takes time. */
const LOOKED_AT = 80;
/** Guesses, as a power of ten, below which a password counts as one of those tried first: where the library's best grade begins. */
const TOO_FEW_GUESSES = 10;
/** Characters of a name or an address that are too short to be told from chance. */
const SHORT_PART = 4;

const kept: { judge?: ZxcvbnFactory } = {};

/** The dictionaries are large: they are read when a password is first chosen. */
function judge(): ZxcvbnFactory {
  kept.judge ??= new ZxcvbnFactory({ dictionary, graphs: adjacencyGraphs });
  return kept.judge;
}

/** The one form of a password: however a keyboard composed its characters, they are the same (Unicode NFKC). */
export function asTyped(password: string): string {
  return password.normalize('NFKC');
}

/**
 * What is wrong with a password that somebody chooses. No kind of character is demanded; what is refused is what is short,
 * commonly used, a mere pattern, or made of the person's own name or address (NIST SP 800-63B-4, 3.1.1.2; OWASP ASVS 5.0, 6.2).
 *
 * @param password   as it was typed
 * @param about      name and address of the person
 * @returns          a sentence; null when nothing is wrong
 */
export function passwordFault(password: string, about: readonly string[]): string | null {
  const typed = asTyped(password);
  const { length } = [...typed];
  if (length < SHORTEST) return `A password has ${SHORTEST} characters at least; several words will do.`;
  if (length > LONGEST) return `A password has ${LONGEST} characters at most.`;
  const own = ['holdfast', ...about.flatMap(partsOf)];
  const lower = typed.toLowerCase();
  if (own.some((part) => lower.includes(part)))
    return 'The password has your name, your address or the word Holdfast in it: leave that out.';
  const { guessesLog10 } = judge().check([...typed].slice(0, LOOKED_AT).join(''), own);
  return guessesLog10 < TOO_FEW_GUESSES
    ? 'This password is among those tried first: it is commonly used, or repeats a short pattern.'
    : null;
}

function partsOf(text: string): string[] {
  return text
    .normalize('NFKC')
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((part) => [...part].length >= SHORT_PART);
}
