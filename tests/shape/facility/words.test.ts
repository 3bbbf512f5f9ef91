import { addressKey, isoDate, keyText, localTime, nameText, zoneName } from '#shape/facility/words';
import { expect, test } from 'vitest';

test.each([
  [
    'a key',
    keyText('k'),
    ['a', 'heater-2', '3', 'a'.repeat(64)],
    ['', 'A', 'a_b', '-a', 'a-', 'a--b', 'ä', 'a b', 'a'.repeat(65)],
  ],
  ['a key of a page', addressKey('k'), ['newt', 'new-1', 'a'], ['new', 'New', '']],
  ['a name', nameText('n'), ['a', 'Tank 1: “reef”', '漢字'], ['', ' a', 'a ', 'a\nb', 'a'.repeat(201)]],
  ['a time', localTime('t'), ['00:00', '23:59', '07:30'], ['24:00', '7:30', '07:60', '07:30:00', '0730', ' 07:30']],
  [
    'a date',
    isoDate('d'),
    ['2026-03-02', '2024-02-29'],
    ['2026-02-29', '2026-13-01', '2026-3-2', '02.03.2026', '2026-03-02T00:00Z'],
  ],
  [
    'a zone',
    zoneName('z'),
    ['Europe/London', 'UTC', 'America/Argentina/Ushuaia'],
    ['Europe/Nowhere', 'Mars', '+01:00', '', 'Europe/'],
  ],
])('%s takes what it should and nothing else', (_, shape, taken, refused) => {
  for (const text of taken) expect(shape.safeParse(text).success, text).toBe(true);
  for (const text of refused) expect(shape.safeParse(text).success, text).toBe(false);
});
