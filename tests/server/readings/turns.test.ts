import { setTimeout as wait } from 'node:timers/promises';
import { describe, expect, test } from 'vitest';
import { Turns } from '#server/readings/turns';

describe('turns', () => {
  test('are had by as many as may, and then by those who wait, in the order they came', async () => {
    const turns = new Turns({ all: 2, each: 2, waiting: 2, waitMs: 5000 });
    const had: string[] = [];
    const take = async (source: string) => {
      if (await turns.take(source)) had.push(source);
      else had.push(`not ${source}`);
    };
    await Promise.all([take('a'), take('b')]);
    const waiting = [take('c'), take('d')];
    await take('e');
    expect(had).toEqual(['a', 'b', 'not e']);
    turns.end('a');
    await waiting[0];
    turns.end('b');
    await waiting[1];
    expect(had).toEqual(['a', 'b', 'not e', 'c', 'd']);
  });

  test('of one source are had no more than it may, and keep no other waiting', async () => {
    const turns = new Turns({ all: 3, each: 1, waiting: 9, waitMs: 5000 });
    expect(await turns.take('slow')).toBe(true);
    const second = turns.take('slow');
    expect(await turns.take('slow')).toBe(false);
    expect(await turns.take('other')).toBe(true);
    turns.end('other');
    expect(await Promise.race([second, wait(20, 'waits')])).toBe('waits');
    turns.end('slow');
    expect(await second).toBe(true);
  });

  test('are not waited for without end, and who gave up has none later', async () => {
    const turns = new Turns({ all: 1, each: 1, waiting: 9, waitMs: 10 });
    expect(await turns.take('a')).toBe(true);
    expect(await turns.take('b')).toBe(false);
    turns.end('a');
    expect(await turns.take('c')).toBe(true);
  });
});
