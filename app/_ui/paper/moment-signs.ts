import type { Moment } from '#core/review/trajectory';

/** The shape of a moment in the course of a fault, from the letters of the font; always beside its word. */
export const MOMENT_SIGNS: Readonly<Record<Moment['kind'], string>> = {
  begins: '⚑',
  noticed: '▼',
  'last-chance': '◇',
  'put-right': '◎',
  harm: '✖',
  event: '·',
};
