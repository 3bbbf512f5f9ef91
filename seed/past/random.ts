/** Numbers that look like chance and are the same for the same words: sfc32, seeded by hashing the words. */
export interface Random {
  /** From 0 up to, and without, 1. */
  next: () => number;
  /** From `low` up to, and without, `high`. */
  between: (low: number, high: number) => number;
  /** Whole, from `low` to `high`, both included. */
  whole: (low: number, high: number) => number;
  /** Around 0 with a standard deviation of 1. */
  normal: () => number;
  /** Whether something of this chance, 0 to 1, comes about. */
  happens: (chance: number) => boolean;
  /** One of a list that is not empty. */
  one: <T>(list: readonly T[]) => T;
}

/**
 * @param words   what the numbers belong to; other words, other numbers
 */
export function randomOf(...words: readonly string[]): Random {
  const next = numbersOf(...words);
  const between = (low: number, high: number) => low + (high - low) * next();
  return {
    next,
    between,
    whole: (low, high) => low + Math.floor((high - low + 1) * next()),
    // Box and Muller's way; 1 − next() is never 0.
    normal: () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
    happens: (chance) => next() < chance,
    one: (list) => {
      const found = list[Math.floor(next() * list.length)];
      if (found === undefined) throw new Error('nothing to choose from');
      return found;
    },
  };
}

/** The bare numbers from 0 up to 1: whoever needs a few of them only, often, is spared the rest. @param words as above */
export function numbersOf(...words: readonly string[]): Random['next'] {
  return sfc32(hash(words.join(' ')));
}

/** Four words of 32 bits out of a text: FNV-1a from four beginnings, in one pass. */
function hash(text: string): [number, number, number, number] {
  let [a, b, c, d] = [2_166_136_261, 84_696_351, 1_099_511_627, -873_292_572];
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    a = Math.imul(a ^ code, 16_777_619);
    b = Math.imul(b ^ code, 16_777_619);
    c = Math.imul(c ^ code, 16_777_619);
    d = Math.imul(d ^ code, 16_777_619);
  }
  return [a, b, c, d];
}

/** Words thrown away at first, so that seeds that are alike part. */
const MIXED = 12;

function sfc32([a0, b0, c0, d0]: [number, number, number, number]): () => number {
  let [a, b, c, d] = [a0, b0, c0, d0];
  const step = () => {
    const t = (a + b + d) | 0;
    d = (d + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + t) | 0;
    return (t >>> 0) / 4_294_967_296;
  };
  for (let i = 0; i < MIXED; i++) step();
  return step;
}
