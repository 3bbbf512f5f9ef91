import 'server-only';
import { ORIGINS, type Origin, QUALITIES, type Quality } from '#core/readings/reading';

// How the words of a reading stand in its columns: a byte or two each, millions of times.

/** 1 device, 2 file, 3 by hand. */
export const originCode = (origin: Origin): number => ORIGINS.indexOf(origin) + 1;

/** 0 good, 1 suspect, 2 bad. */
export const qualityCode = (quality: Quality): number => QUALITIES.indexOf(quality);

/** @throws for a number that stands for none */
export function originOf(code: unknown): Origin {
  return known(ORIGINS[Number(code) - 1], code);
}

/** @throws for a number that stands for none */
export function qualityOf(code: unknown): Quality {
  return known(QUALITIES[Number(code)], code);
}

function known<T>(word: T | undefined, code: unknown): T {
  if (word === undefined) throw new Error(`No word for ${String(code)}`);
  return word;
}
