import { setImmediate as nextTurn } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { readLoggerFile } from '#server/readings/file/read-logger-file';
import { parseCsv } from '#server/readings/parse-csv';

const HEAD = 'time,temperature\n2026-01-05 08:00,24.5\n2026-01-05 09:00,24.6\n';
/** Somewhat less than the longest file that is taken. */
const LETTERS = 19_000_000;
const filled = (piece: string, letters = LETTERS) => piece.repeat(Math.floor(letters / piece.length));

async function saidOf(text: string): Promise<string> {
  const read = await readLoggerFile(new TextEncoder().encode(text), {});
  return read.ok ? 'read' : JSON.stringify(read.reason);
}

test.each([
  ['one line of letters', filled('x'), 'Line 1: a row is longer than 100000 characters'],
  ['one line of empty cells', filled(','), 'Line 1: a row is longer than 100000 characters'],
  ['one line of quotes and blanks', filled('" '), 'Line 1: a row is longer than 100000 characters'],
  ['a line without end below good ones', `${HEAD}${filled('1')}`, 'Line 4: a row is longer than 100000 characters'],
  ['a million columns', filled('a,', 2_000_000), 'Line 1: a row is longer than 100000 characters'],
  ['objects without number', `[${filled('{},')}{}]`, 'more than 1000000 objects and lists'],
  ['lists within lists', filled('['), 'more than 1000000 objects and lists'],
  [
    'a field of its own for each value',
    `[{${Array.from({ length: 50_000 }, (_, i) => `"k${i}":1`).join()}}]`,
    'more than 200 fields',
  ],
])('a file that is %s is refused before it is cut up', async (_, text, said) => {
  expect(await saidOf(text)).toContain(said);
});

// Looked through letter by letter these take the square of their length, which is minutes.
test.each([
  ['dates', `2026-01-05 08:00${' '.repeat(90_000)}x,24.5\n`],
  ['times', `2026-01-05 08:00,08:00${' '.repeat(90_000)}x\n`],
  ['numbers', `2026-01-05 08:00,${'1'.repeat(90_000)}x\n`],
])('a file of %s that never end is read in a moment', async (_, row) => {
  expect(await saidOf(`${HEAD}${filled(row, 2_000_000)}`)).toBe('read');
});

test('nor does a line of a table that is sent hold anybody up: a value that is no number is told as such', () => {
  const rows = Array.from({ length: 2000 }, () => `a,2026-01-05T08:00:00Z,${'1'.repeat(1900)}x`);
  const read = parseCsv(`name,time,value\n${rows.join('\n')}`);
  expect(read.ok && read.value.every((one) => !one.ok && one.reason.field === 'value')).toBe(true);
});

test('others have their turn while a long file is read', async () => {
  const rows = Array.from({ length: 20_000 }, (_, i) => `2026-01-05 08:00:${String(i % 60).padStart(2, '0')},24.5`);
  let turns = 0;
  let isRead = false;
  const reading = saidOf(`time,temperature\n${rows.join('\n')}\n`).finally(() => {
    isRead = true;
  });
  while (!isRead) {
    await nextTurn();
    turns += 1;
  }
  expect(await reading).toBe('read');
  expect(turns).toBeGreaterThan(20);
});
