import { describe, expect, test } from 'vitest';
import { writeCsv } from '#shape/csv/write-csv';

const line = (...cells: Parameters<typeof writeCsv>[1][number]): string => writeCsv([], [cells]).split('\r\n')[1] ?? '';

describe('a cell', () => {
  // OWASP ASVS 5.0, 1.2.10: a text that begins with one of these gets a single quote; quoting as RFC 4180 has it.
  test.each([
    ['=HYPERLINK("x")', `"'=HYPERLINK(""x"")"`],
    ['-3.5 approx', `'-3.5 approx`],
    ['+49 30 1', `'+49 30 1`],
    ['@SUM(A1)', `'@SUM(A1)`],
    ['\t=1', `'\t=1`],
    ['\r=1', `"'\r=1"`],
    ['\0=1', `'\0=1`],
    ['a=b', 'a=b'],
    ['', ''],
  ])('that holds the text %j is written as %j', (text, expected) => {
    expect(writeCsv([], [[text]])).toBe(`\r\n${expected}\r\n`);
  });

  test('that holds a figure stays a figure, also below zero', () => {
    expect(line(-3.5, 0, 12)).toBe('-3.5,0,12');
  });

  // RFC 4180, section 2, rules 5 to 7.
  test.each([
    ['aaa', 'aaa'],
    ['b\r\nbb', '"b\r\nbb"'],
    ['b"bb', '"b""bb"'],
    ['b,bb', '"b,bb"'],
  ])('that holds %j is quoted where it must be', (text, expected) => {
    expect(writeCsv([], [[text]])).toBe(`\r\n${expected}\r\n`);
  });

  test('that holds nothing is empty, and an instant is written in UTC', () => {
    expect(line(null, new Date('2026-11-25T06:30:00Z'))).toBe(',2026-11-25T06:30:00.000Z');
  });
});

test('the names of the columns are the first line, and every line ends as RFC 4180 has it', () => {
  expect(writeCsv(['a', 'b'], [['1', 2]])).toBe('a,b\r\n1,2\r\n');
});
