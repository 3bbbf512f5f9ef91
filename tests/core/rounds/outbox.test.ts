import fc from 'fast-check';
import { validate, version } from 'uuid';
import { describe, expect, test } from 'vitest';
import { clientId } from '#core/rounds/client-id';
import type { Entry } from '#core/rounds/entry';
import { afterAnswer, type ItemAnswer, nextBatch, type Outgoing, waiting } from '#core/rounds/outbox';
import { takeIn } from '#core/rounds/take-in';
import { tankCode, typedCode } from '#core/rounds/tank-code';

type Item = Outgoing & { entry: Entry };
const LINES = ['a', 'b', 'c'];
const DEVICES = 3;
const MOST = 2;

const blank = (id: string, check: string, by: string, atMs: number): Entry => ({
  id,
  check,
  atMs,
  by,
  value: { kind: 'yes-no', asUsual: true },
  notDone: null,
  note: null,
  supersedes: null,
  reason: null,
});

/** The other side: what was taken in, in the order it came, and whether the round is signed. */
class Site {
  readonly kept: Entry[] = [];
  isSigned = false;

  receive(items: readonly Item[]): ItemAnswer[] {
    return items.map(({ entry }) => {
      const taken = takeIn(this.kept, entry, this.isSigned);
      if (taken.outcome === 'stored' || taken.outcome === 'conflict') this.kept.push(taken.entry);
      return { id: entry.id, outcome: taken.outcome };
    });
  }
}

/** What happens: somebody enters or corrects, a telephone sends and something breaks off or not, or the round is signed. */
const step = fc.oneof(
  fc.record({ do: fc.constant('enter' as const), device: fc.nat(DEVICES - 1), line: fc.constantFrom(...LINES) }),
  fc.record({ do: fc.constant('correct' as const), device: fc.nat(DEVICES - 1), back: fc.nat(5) }),
  fc.record({
    do: fc.constant('send' as const),
    device: fc.nat(DEVICES - 1),
    // Sent twice stands for two tabs, or for a request that was repeated below us.
    end: fc.constantFrom('arrives', 'request-lost', 'answer-lost', 'sent-twice', 'half-answered'),
  }),
  fc.record({ do: fc.constant('sign' as const) }),
);

/** Walks through some steps. Telephones keep nothing but their items: each step begins as if they were just reloaded. */
function walkThrough(steps: readonly (typeof step extends fc.Arbitrary<infer S> ? S : never)[]) {
  const site = new Site();
  const phones: Item[][] = Array.from({ length: DEVICES }, () => []);
  let made = 0;
  const add = (device: number, entry: Entry) =>
    (phones[device] = [...(phones[device] ?? []), { id: entry.id, seq: made, state: 'waiting', said: null, entry }]);
  for (const one of steps) {
    made++;
    if (one.do === 'enter') add(one.device, blank(`e${made}`, one.line, `p${one.device}`, made * 1000));
    if (one.do === 'correct') {
      const target = phones[one.device]?.at(-1 - one.back)?.entry;
      if (target)
        add(one.device, {
          ...blank(`e${made}`, target.check, target.by, made * 1000),
          supersedes: target.id,
          reason: 'slip',
        });
    }
    if (one.do === 'sign') site.isSigned = true;
    if (one.do === 'send') {
      const batch = nextBatch(phones[one.device] ?? [], MOST);
      if (one.end === 'request-lost') continue;
      const answers = site.receive(batch);
      if (one.end === 'sent-twice') site.receive(batch);
      if (one.end === 'answer-lost') continue;
      phones[one.device] = afterAnswer(
        phones[one.device] ?? [],
        one.end === 'half-answered' ? answers.slice(0, 1) : answers,
      );
    }
  }
  return { site, phones };
}

describe('the code on the label of a tank', () => {
  test('has six of the digits that are not mistaken for one another, and is read however it is typed', () => {
    const code = tankCode('reef', 'display');
    expect(code).toMatch(/^[0-9A-HJKMNP-TV-Z]{6}$/);
    expect(tankCode('reef', 'sump')).not.toBe(code);
    expect(typedCode(' o1-lI ')).toBe('0111');
    expect(typedCode(code.toLowerCase())).toBe(code);
  });
});

describe('what is entered without a signal', () => {
  test('arrives exactly once, in order, at the time it was made, however telephones, lines and answers break off', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 40 }), (steps) => {
        const { site, phones } = walkThrough(steps);
        for (const [at, phone] of phones.entries()) {
          // Until everything has arrived, what waits and what is there make up all that was made, and nothing besides.
          const there = new Set(site.kept.map(({ id }) => id));
          for (const item of phone) expect(there.has(item.id) || item.state === 'waiting').toBe(true);
          let left = phone;
          while (waiting(left).length > 0) left = afterAnswer(left, site.receive(nextBatch(left, MOST)));
          expect(left.filter(({ state }) => state !== 'kept')).toEqual([]);
          const own = site.kept.filter(({ by }) => by === `p${at}`);
          expect(own.map(({ id }) => id)).toEqual(phone.map(({ id }) => id));
          for (const entry of own.filter(({ supersedes }) => supersedes === null))
            expect(entry.atMs).toBe(phone.find(({ id }) => id === entry.id)?.entry.atMs);
        }
        expect(site.kept).toHaveLength(phones.flat().length);
      }),
      { numRuns: 200 },
    );
  });

  test('of two on one line is kept from both, and the second is told', () => {
    const first = blank('1', 'a', 'ash', 1);
    expect(takeIn([first], blank('2', 'a', 'bo', 2), false)).toMatchObject({ outcome: 'conflict', beside: 'entered' });
    expect(takeIn([first], blank('2', 'b', 'bo', 2), true)).toMatchObject({ outcome: 'conflict', beside: 'signed' });
  });

  test('that calls for help goes out before all that was made earlier, whose order stays', () => {
    const made = [1, 2, 3, 4].map((seq): Outgoing => ({ id: `e${seq}`, seq, state: 'waiting', said: null }));
    const items = made.map((item) => (item.seq === 3 ? { ...item, isUrgent: true } : item));
    const ids = (all: readonly Outgoing[]) => all.map(({ id }) => id);
    expect(ids(nextBatch(items, MOST))).toEqual(['e3']);
    const after = afterAnswer(items, [{ id: 'e3', outcome: 'stored' }]);
    expect(ids(nextBatch(after, MOST))).toEqual(['e1', 'e2']);
  });

  test('is refused when its id is that of another entry, and never takes its place', () => {
    expect(takeIn([blank('1', 'a', 'ash', 1)], blank('1', 'b', 'ash', 2), false)).toEqual({ outcome: 'refused' });
    expect(takeIn([blank('1', 'a', 'ash', 1)], blank('1', 'a', 'bo', 2), false)).toEqual({ outcome: 'refused' });
  });

  test('that corrects what never came stands for itself, with what was said of why', () => {
    const late = { ...blank('2', 'a', 'ash', 2), supersedes: '1', reason: 'misread' };
    expect(takeIn([], late, false)).toMatchObject({
      outcome: 'conflict',
      entry: { supersedes: null, reason: null, note: 'misread' },
    });
  });

  test('bears an id that the package uuid takes for a version 7, ordered by time', () => {
    const chance = Uint8Array.from({ length: 10 }, (_, at) => 255 - at);
    const [early, later] = [clientId(1_796_000_000_000, chance), clientId(1_796_000_000_001, chance)];
    expect([validate(early), version(early)]).toEqual([true, 7]);
    expect(early < later).toBe(true);
  });
});
