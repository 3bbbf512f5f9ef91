import type { Figure } from '#core/facility/figure';
import fc from 'fast-check';

/** Texts that a careless reader of YAML takes for something else. */
const TRAPS = [
  'no',
  'yes',
  'on',
  'null',
  '~',
  'true',
  '07:30',
  '2026-03-02',
  '1e3',
  '0x10',
  '0o7',
  '1_000',
  '12',
  '.inf',
  '.nan',
  '- a',
  '-',
  '?',
  ':',
  'a: b',
  '# x',
  'a #b',
  '"q"',
  "'",
  '{a}',
  '[x]',
  '<<',
  '=',
  '!tag',
  '&a',
  '*a',
  '%',
  '@',
  '`',
  '|',
  '>',
  '---',
  '...',
  'ends:',
  'ö',
  '漢字',
  '🐟',
  'a\u0085b',
  'unknown',
];

/** One line of text without spaces at its ends. */
export function anyName(): fc.Arbitrary<string> {
  const line = fc
    .string({ unit: 'grapheme', minLength: 1, maxLength: 12 })
    .filter((text) => /^\S(?:.*\S)?$/.test(text));
  return fc.oneof(fc.constantFrom(...TRAPS), line);
}

/** Text of any kind that is not blank. */
export function anyText(): fc.Arbitrary<string> {
  const text = fc.string({ unit: 'binary', minLength: 1, maxLength: 30 }).filter((given) => /\S/.test(given));
  const lines = fc.array(fc.constantFrom('a', ' b', '', '\tc', 'd ', '# e', '- f'), { minLength: 2, maxLength: 5 });
  return fc.oneof(
    fc.constantFrom(...TRAPS),
    text,
    lines.map((parts) => `x${parts.join('\n')}`),
  );
}

/** A number between these two, never the negative zero, which no file can hold. */
export function anyNumber(min: number, max: number): fc.Arbitrary<number> {
  return fc
    .oneof(fc.integer({ min: Math.ceil(min), max: Math.floor(max) }), fc.double({ min, max, noNaN: true }))
    .map((value) => value + 0);
}

/** A figure of any origin. */
export function anyFigure(min: number, max: number): fc.Arbitrary<Figure> {
  const origin = fc.constantFrom('measured', 'entered', 'default');
  const range = fc.tuple(anyNumber(min, max), anyNumber(min, max), anyNumber(min, max));
  const detailed = fc.record({ range, origin, low: fc.boolean(), high: fc.boolean(), source: maybe(anyText()) });
  return fc.oneof(
    fc.constant<Figure>({ value: null, origin: 'unknown' }),
    anyNumber(min, max).map((value): Figure => ({ value, origin: 'entered' })),
    detailed.map(({ range: three, origin: from, low, high, source }): Figure => {
      const [least, value, most] = [...three].sort((a, b) => a - b);
      const figure: Figure = { value: value ?? 0, origin: from as Figure['origin'] };
      if (low) figure.low = least ?? 0;
      if (high) figure.high = most ?? 0;
      return source === undefined ? figure : { ...figure, source };
    }),
  );
}

/** A figure that is unknown or says where it is from. */
export function anySourced(min: number, max: number): fc.Arbitrary<Figure> {
  return fc
    .tuple(anyFigure(min, max), anyText())
    .map(([figure, source]) => (figure.value === null ? figure : { ...figure, source }));
}

/** The thing or nothing. */
export function maybe<T>(thing: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> {
  return fc.option(thing, { nil: undefined });
}

/** Some of these, in any order. */
export function someOf<T>(things: readonly T[], minLength = 0): fc.Arbitrary<T[]> {
  return fc.shuffledSubarray([...things], { minLength });
}

/** One of these, or nothing; always nothing when there are none. */
export function maybeOneOf<T>(things: readonly T[]): fc.Arbitrary<T | undefined> {
  return things.length === 0 ? fc.constant(undefined) : maybe(fc.constantFrom(...things));
}
