import { describe, expect, test } from 'vitest';
import { runInLanes } from '../_support/lanes.mjs';
import { STEPS } from '../steps.mjs';

/** Runs steps that last so many turns of the event loop each, and says what came to pass, in order. */
async function runAll(steps: { heading: string; turns: number; after?: string[] }[], lanes: number) {
  const events: string[] = [];
  let shown = '';
  let running = 0;
  let most = 0;
  const results = await runInLanes(
    steps,
    lanes,
    async ({ heading, turns }, say) => {
      running += 1;
      most = Math.max(most, running);
      events.push(`${heading} begins`);
      for (let turn = 1; turn <= turns; turn += 1) {
        say(`${heading}${turn} `);
        await new Promise(setImmediate);
      }
      events.push(`${heading} ends`);
      running -= 1;
      return heading;
    },
    (words) => {
      shown += words;
    },
  );
  return { events, shown, results, most };
}

describe('steps in lanes', () => {
  const steps = [
    { heading: 'a', turns: 5 },
    { heading: 'b', turns: 1 },
    { heading: 'c', turns: 1 },
  ];

  test('every step runs once and is heard whole, in the order of the list, though a later one ends first', async () => {
    const { events, shown, results } = await runAll(steps, 2);
    expect(events.indexOf('c ends')).toBeLessThan(events.indexOf('a ends'));
    expect(shown).toBe('a1 a2 a3 a4 a5 b1 c1 ');
    expect(results).toEqual(['a', 'b', 'c']);
  });

  test('no more run at once than there are lanes, and with one lane they follow each other', async () => {
    expect((await runAll(steps, 2)).most).toBe(2);
    const { events, most } = await runAll(steps, 1);
    expect(most).toBe(1);
    expect(events).toEqual(['a begins', 'a ends', 'b begins', 'b ends', 'c begins', 'c ends']);
  });

  test('a step waits for those it comes after, lets others by meanwhile, and waits for none that is left out', async () => {
    const [a, b, c] = steps;
    const waiting = [a, { ...b, after: ['a'] }, { ...c, after: ['not in the list'] }] as typeof steps;
    const { events } = await runAll(waiting, 2);
    expect(events.indexOf('b begins')).toBeGreaterThan(events.indexOf('a ends'));
    expect(events.indexOf('c begins')).toBeLessThan(events.indexOf('a ends'));
  });

  test('steps that wait for each other are refused, and what breaks a step is thrown', async () => {
    const circle = [
      { heading: 'a', turns: 1, after: ['b'] },
      { heading: 'b', turns: 1, after: ['a'] },
    ];
    await expect(runAll(circle, 2)).rejects.toThrow('wait for each other: a, b');
    const broken = runInLanes([{ heading: 'a' }], 2, () => Promise.reject(new Error('no such program')), String);
    await expect(broken).rejects.toThrow('no such program');
  });

  test('npm test names no step twice, and waits for none that is not there', () => {
    const names = STEPS.map(({ heading }) => heading);
    expect(new Set(names).size).toBe(names.length);
    expect(STEPS.flatMap(({ after = [] }) => after).filter((name) => !names.includes(name))).toEqual([]);
  });
});
