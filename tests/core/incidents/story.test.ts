import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { actionsOf, isOnlyWords } from '#core/incidents/actions';
import { namesApart } from '#core/incidents/doers';
import { ENTRY_KINDS, type Entry, STEPS } from '#core/incidents/incident';
import { lossesOf } from '#core/incidents/losses';
import { marksOf } from '#core/incidents/marks';
import { signingOf } from '#core/incidents/state';
import { newestBy, standing, storyOf } from '#core/incidents/story';
import { mergeTimeline, type TimelineLine, TOPICS } from '#core/incidents/timeline';
import words from '#core/incidents/words.json';
import { entrySaid } from '#core/incidents/words';
import { at, entry, entryId, mark } from './build-entry';

const log = (clock: string, text: string, more = {}) => entry('log', clock, { text, source: 'witness' }, more);
const loss = (clock: string, dead: number, more = {}) =>
  entry('loss', clock, { group: 'Reef fish', dead, putDown: 0, affected: 0, missing: 0, waterL: 0, ...more });

/** Entries of many kinds, some corrected, some taken back, some of the same minute. */
const entries = fc
  .array(fc.record({ kind: fc.nat(5), minute: fc.nat(5), written: fc.nat(3), corrects: fc.boolean() }), {
    maxLength: 25,
  })
  .map((drawn) => {
    const made: Entry[] = [];
    for (const { kind, minute, written, corrects } of drawn) {
      const clock = `07:0${minute}`;
      const more = { recordedMs: at(`08:0${written}`), id: entryId() };
      const before = made.findLast((one) => one.kind === 'log' && !made.some((later) => later.supersedes === one.id));
      if (corrects && before) made.push(log(clock, 'corrected', { ...more, supersedes: before.id, reason: 'wrong' }));
      else if (kind === 0) made.push(mark('put-right', clock));
      else if (kind === 1) made.push(loss(clock, minute));
      else if (kind === 2) made.push(entry('step', clock, { step: STEPS[written] ?? 'isolate' }, more));
      else made.push(log(clock, `line ${minute}`, more));
    }
    return made;
  });

/** All that follows from entries. */
function told(given: readonly Entry[]) {
  const { afterwards, ...signing } = signingOf(given);
  return {
    story: storyOf(given),
    marks: marksOf(given, []),
    losses: lossesOf(given, at('07:00')),
    actions: actionsOf(given, '2026-11-25'),
    signing,
    afterwards: [...afterwards].sort(),
    last: [...newestBy(standing(given, 'mark'), ({ body }) => body?.mark ?? '').values()],
  };
}

describe('the story of an incident', () => {
  test('is the same in whatever order its entries are read', () => {
    fc.assert(
      fc.property(
        entries.chain((made) => fc.tuple(fc.constant(made), fc.shuffledSubarray(made, { minLength: made.length }))),
        ([made, shuffled]) => {
          expect(told(shuffled)).toEqual(told(made));
        },
      ),
    );
  });

  test('has every entry once, in the order in which things happened', () => {
    fc.assert(
      fc.property(entries, (made) => {
        const story = storyOf(made);
        expect(story.map(({ entry: one }) => one.id).sort()).toEqual(made.map(({ id }) => id).sort());
        const times = story.map(({ entry: one }) => one.atMs);
        expect(times).toEqual([...times].sort((a, b) => a - b));
      }),
    );
  });

  test('keeps what was corrected, and counts only what stands', () => {
    const wrong = log('07:00', 'return pump off');
    const right = log('07:00', 'return pump on', { supersedes: wrong.id, reason: 'misheard' });
    const gone = entry('log', '07:01', null, { supersedes: right.id, reason: 'another system' });
    expect(standing([gone, right, wrong], 'log')).toEqual([]);
    expect(standing([right, wrong], 'log').map(({ body }) => body.text)).toEqual(['return pump on']);
    expect(storyOf([gone, right, wrong]).map(({ supersededBy }) => supersededBy?.id ?? null)).toEqual([
      right.id,
      gone.id,
      null,
    ]);
  });
});

describe('losses', () => {
  test('are added up by group, with late deaths from a day after it was put right', () => {
    const right = at('08:00');
    const day = 86_400_000;
    const later = (days: number, dead: number) => ({ ...loss('08:00', dead), atMs: right + days * day });
    const water = loss('07:30', 0, { group: 'Water', waterL: 40 });
    const found = lossesOf([loss('07:10', 3), later(1, 1), later(2, 2), water], right);
    expect(found.groups).toEqual([{ group: 'Reef fish', dead: 6, putDown: 0, affected: 0, missing: 0, late: 2 }]);
    expect(found).toMatchObject({ waterL: 40, firstMs: at('07:10'), followedUntilMs: right + 14 * day });
  });
});

describe('actions', () => {
  const action = (strength: 'remove' | 'procedure' | 'reminder', due = '2026-11-24') =>
    entry('action', '09:00', { text: 'x', owner: 'lead', due, strength });

  test('are late the day after they were due, and done with their proof', () => {
    const [one, other] = [action('remove'), action('procedure', '2026-11-25')];
    const done = entry('action-done', '10:00', { action: one.id, proof: 'tested with the plug pulled' });
    expect(actionsOf([one, other], '2026-11-25').map(({ isLate }) => isLate)).toEqual([true, false]);
    expect(actionsOf([done, one, other], '2026-11-25')[0]).toMatchObject({ isLate: false, done: { id: done.id } });
  });

  test('that only tell people to do better are questioned', () => {
    const lines = (...all: Entry[]) => actionsOf(all, '2026-11-25');
    expect(isOnlyWords(lines(action('reminder'), action('procedure')))).toBe(true);
    expect(isOnlyWords(lines(action('reminder'), action('remove')))).toBe(false);
    expect(isOnlyWords([])).toBe(false);
  });
});

describe('the timeline', () => {
  const lines = fc.array(
    fc
      .record({ id: fc.uuid(), atMs: fc.nat(4), topic: fc.constantFrom(...TOPICS) })
      .map((one): TimelineLine => ({ ...one, what: 'x', who: null, source: 'device' })),
    { maxLength: 30 },
  );

  test('is the same whatever order its parts come in', () => {
    fc.assert(
      fc.property(lines, lines, (a, b) => {
        expect(mergeTimeline([b, a])).toEqual(mergeTimeline([a, b]));
        expect(mergeTimeline([[...a].reverse(), b])).toEqual(mergeTimeline([a, b]));
        expect(mergeTimeline([a, b])).toHaveLength(a.length + b.length);
      }),
    );
  });

  test('tells several of one role apart without their names', () => {
    const [ash, robin, sam] = [
      { name: 'Ash', role: 'aquarist' },
      { name: 'Robin', role: 'aquarist' },
      { name: 'Sam', role: 'lead' },
    ];
    const called = namesApart([robin, sam, ash, robin]);
    expect([...called]).toEqual([
      ['Robin', 'aquarist 1'],
      ['Sam', 'lead'],
      ['Ash', 'aquarist 2'],
    ]);
  });
});

test('everything an entry can be has its word', () => {
  expect(Object.keys(words.kinds).sort()).toEqual([...ENTRY_KINDS].sort());
  expect(Object.keys(words.steps).sort()).toEqual([...STEPS].sort());
  const said = entrySaid(entry('step', '07:00', { step: 'isolate', notDone: 'the board is wet' }), new Map());
  expect(said).toBe('What went wrong is isolated: not done, because the board is wet');
});
