import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { gather, type Gatherer } from '#server/live/gather';

let told: string[];
let gatherer: Gatherer;
beforeEach(() => {
  vi.useFakeTimers();
  told = [];
  gatherer = gather((what) => told.push(what.join(' ')));
});
afterEach(() => {
  gatherer.stop();
  vi.useRealTimers();
});

describe('changes that are gathered', () => {
  test('are told at once, and what follows within a quarter of a second together', () => {
    gatherer.add(['alarms']);
    gatherer.add(['rounds']);
    gatherer.add(['alarms']);
    gatherer.add(['readings']);
    expect(told).toEqual(['alarms']);
    vi.advanceTimersByTime(249);
    expect(told).toEqual(['alarms']);
    vi.advanceTimersByTime(1);
    expect(told).toEqual(['alarms', 'rounds alarms readings']);
  });

  test('hold nothing back that is more than readings', () => {
    gatherer.add(['readings']);
    gatherer.add(['readings']);
    gatherer.add(['alarms']);
    expect(told).toEqual(['readings', 'readings alarms']);
    gatherer.add(['alarms']);
    expect(told).toHaveLength(2);
    vi.advanceTimersByTime(250);
    expect(told).toEqual(['readings', 'readings alarms', 'alarms']);
  });

  test('are told no more once nobody listens', () => {
    gatherer.add(['readings']);
    gatherer.add(['readings']);
    gatherer.stop();
    vi.advanceTimersByTime(1000);
    expect(told).toEqual(['readings']);
  });
});
