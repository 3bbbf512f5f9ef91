import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readAnchors, writeAnchor } from '#shape/record/anchor';

const SITE = '01a2119e-3a5a-773f-ac5d-188c0fd166eb';
const SEAL = 'ab'.repeat(32);
const LINE = `holdfast.anchor/1 ${SITE} 12 ${SEAL} 2026-11-25T06:00:00.000Z`;

test('an anchor is one line, and reads as what was written', () => {
  const anchor = { site: SITE, seq: 12, seal: SEAL, at: '2026-11-25T06:00:00.000Z' };
  expect(writeAnchor(anchor)).toBe(`${LINE}\n`);
  expect(readAnchors(`\n${LINE}\r\n\n`)).toEqual({ anchors: [anchor], faults: [] });
});

test.each([
  ['another format', LINE.replace('/1', '/2'), 'not an anchor'],
  ['a word too few', LINE.replace(/ \S+$/, ''), 'not an anchor'],
  ['a word too many', `${LINE} x`, 'not an anchor'],
  ['no site', LINE.replace(SITE, 'harbour'), 'UUID'],
  ['no number', LINE.replace(' 12 ', ' 0 '), 'whole number'],
  ['a number that is none', LINE.replace(' 12 ', ' 0x1 '), 'whole number'],
  ['a number beyond counting', LINE.replace(' 12 ', ' 9999999999 '), 'whole number'],
  ['a seal cut short', LINE.replace(SEAL, SEAL.slice(1)), '64 hexadecimal'],
  ['no instant', LINE.replace(/\S+$/, 'today'), 'instant'],
])('a line with %s is a fault with its place', (_what, line, words) => {
  const { anchors, faults } = readAnchors(`${LINE}\n${line}\n`);
  expect(anchors).toHaveLength(1);
  expect(faults).toEqual([{ line: 2, message: expect.stringContaining(words) }]);
});

test('no text whatever makes it throw', () => {
  fc.assert(fc.property(fc.string(), (text) => readAnchors(text).faults.length <= text.split('\n').length));
});
