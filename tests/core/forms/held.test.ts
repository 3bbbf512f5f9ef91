import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Answered, type Held, heldAfter } from '#core/forms/held';

const done = (): Answered => ({ ok: true });
const refused = (): Answered => ({ ok: false });
const ids = (n: number) => ({ entry: `id-${n}` });

test('a form keeps its ids however often the page is drawn, through refusals as well, until it is done', () => {
  let held: Held = { ids: ids(0), after: null };
  for (const [n, answer] of [null, null, refused(), refused()].entries()) held = heldAfter(held, ids(n + 1), answer);
  expect(held.ids).toEqual(ids(0));
  expect(heldAfter(held, ids(5), done()).ids).toEqual(ids(5));
});

test('it waits for other ids when it is done before the page is drawn', () => {
  const answer = done();
  const held = heldAfter({ ids: ids(0), after: null }, ids(0), answer);
  expect(held.ids).toEqual(ids(0));
  expect(heldAfter(held, ids(1), answer).ids).toEqual(ids(1));
});

test('whatever is drawn and answered, each set of ids is given up once at most, and for an answer of its own', () => {
  const step = fc.record({ drawn: fc.boolean(), comes: fc.constantFrom('nothing', 'done', 'refused') });
  fc.assert(
    fc.property(fc.array(step, { maxLength: 30 }), (steps) => {
      let [held, given, answer]: [Held, number, Answered | null] = [{ ids: ids(0), after: null }, 0, null];
      let [dones, changes] = [0, 0];
      for (const { drawn, comes } of steps) {
        if (drawn) given += 1;
        if (comes === 'done') dones += 1;
        if (comes !== 'nothing') answer = comes === 'done' ? done() : refused();
        const next: Held = heldAfter(held, ids(given), answer);
        if (next !== held) changes += 1;
        held = next;
        expect(heldAfter(held, ids(given), answer)).toBe(held);
      }
      expect(changes).toBeLessThanOrEqual(dones);
    }),
  );
});
