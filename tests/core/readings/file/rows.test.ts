import { describe, expect, test } from 'vitest';
import { loneZeros } from '#core/readings/file/lone-zeros';
import { followOrder } from '#core/readings/file/order-rows';
import type { TurnedRow } from '#core/readings/file/turn-row';

const row = (line: number, value: number, atMs = line * 60_000): TurnedRow => ({
  line,
  moment: { atMs },
  values: [{ place: 1, sensor: 'o2', raw: String(value), value, quality: 'good' }],
  faults: [],
  missing: 0,
});

describe('zeros of a probe', () => {
  const marked = (values: number[]) => {
    const { push, end } = loneZeros(() => 'oxygen');
    const rows = values.map((value, i) => row(i, value));
    return [...rows.flatMap(push), ...end()].map(({ values: [one] }) => one?.quality ?? 'none');
  };

  test('between neighbours that are none are suspect, up to three of them', () => {
    expect(marked([8, 0, 8])).toEqual(['good', 'suspect', 'good']);
    expect(marked([8, 0, 0, 0, 8])).toEqual(['good', 'suspect', 'suspect', 'suspect', 'good']);
  });

  test('of a longer stretch are a tank without oxygen, and stay', () => {
    expect(marked([8, 0, 0, 0, 0, 8])).toEqual(Array.from({ length: 6 }, () => 'good'));
    expect(marked([0, 0, 8, 8])).toEqual(['good', 'good', 'good', 'good']);
    expect(marked([8, 0, 0])).toEqual(['good', 'good', 'good']);
  });

  test('are marked however long the file is, and every row comes out once and in order', () => {
    const values = Array.from({ length: 200 }, (_, i) => (i % 10 === 5 ? 0 : 7));
    const { push, end } = loneZeros(() => 'oxygen');
    const out = [...values.map((value, i) => row(i, value)).flatMap(push), ...end()];
    expect(out.map(({ line }) => line)).toEqual(values.map((_, i) => i));
    expect(out.filter(({ values: [one] }) => one?.reason === 'probe-out').length).toBe(20);
  });

  test('of a quantity that is often 0 say nothing', () => {
    const { push, end } = loneZeros(() => 'flow');
    const out = [...[800, 0, 800].map((value, i) => row(i, value)).flatMap(push), ...end()];
    expect(out.every(({ values: [one] }) => one?.quality === 'good')).toBe(true);
  });
});

describe('the order of a file', () => {
  const HOUR = 3_600_000;

  test('newest first is no jump; a jump back is told with its line', () => {
    const { notes, follow } = followOrder();
    for (const [line, at] of [9, 8, 7, 12, 11, 6].entries()) follow(row(line, 1, at * HOUR));
    expect(notes).toMatchObject({ isNewestFirst: true, jumps: 1, jumpLines: [3] });
  });

  test('tells the two passes through an hour that is repeated apart, either way round', () => {
    // Half-hourly through the night of the change: 00:30, 01:00, 01:30, 01:00, 01:30, 02:00 on the wall.
    const wall = [0.5, 1, 1.5, 1, 1.5, 2];
    const repeated = (hour: number) => hour >= 1 && hour < 2;
    const rows = () =>
      wall.map((hour, line): TurnedRow => {
        const atMs = (hour < 2 ? hour - 1 : hour) * HOUR;
        return { ...row(line, 1), moment: { atMs, ...(repeated(hour) ? { againMs: atMs + HOUR } : {}) } };
      });
    const right = [-0.5, 0, 0.5, 1, 1.5, 2].map((hour) => hour * HOUR);
    const run = (given: TurnedRow[]) => {
      const { notes, follow } = followOrder();
      for (const one of given) follow(one);
      expect(notes).toMatchObject({ repeated: 4, second: 2, jumps: 0 });
      return given.map(({ moment }) => moment.atMs);
    };
    expect(run(rows())).toEqual(right);
    expect(run(rows().reverse())).toEqual([...right].reverse());
  });
});
