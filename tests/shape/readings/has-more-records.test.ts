import fc from 'fast-check';
import { expect, test } from 'vitest';
import { hasMoreRecords } from '#shape/readings/has-more-records';

const text = fc.string({ unit: fc.constantFrom('{', '}', '[', ']', '"', '\\', ',', 'a'), maxLength: 6 });
const record = fc.dictionary(text, fc.oneof(text, fc.double(), fc.array(text), fc.dictionary(text, text)), {
  maxKeys: 3,
});

test('as many records as the parsed pack has are counted in its text, whatever stands in them', () => {
  fc.assert(
    fc.property(fc.array(record, { maxLength: 6 }), fc.nat(6), (pack, most) => {
      expect(hasMoreRecords(JSON.stringify(pack), most)).toBe(pack.length > most);
    }),
    { numRuns: 200 },
  );
});

test('a body of 4 MB of empty records is refused before a million of them take fifty times its memory', () => {
  const body = `[${'{},'.repeat(1_333_332)}{}]`;
  const before = process.memoryUsage().heapUsed;
  expect(hasMoreRecords(body, 20_000)).toBe(true);
  expect(process.memoryUsage().heapUsed - before).toBeLessThan(8_000_000);
});
