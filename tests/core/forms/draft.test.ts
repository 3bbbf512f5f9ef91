import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { emptyGroup, isFirst, isSame, isThere, keyFrom, rebased, withPart } from '#core/forms/draft';
import type { DraftGroup, Field } from '#core/forms/field';

const FRAME = { about: '', optional: true, first: false } as const;
const text = (name: string, more: Partial<Field> = {}): Field =>
  ({ ...FRAME, name, label: name, kind: 'text', long: false, ...more }) as Field;

describe('what was typed', () => {
  test('is changed in one part, and the rest stays as it was', () => {
    const draft = { name: 'a', list: [{ x: '1' }, { x: '2' }] };
    expect(withPart(draft, ['list', 1, 'x'], '3')).toEqual({ name: 'a', list: [{ x: '1' }, { x: '3' }] });
    expect(withPart(draft, ['list', 0], undefined)).toEqual({ name: 'a', list: [{ x: '2' }] });
    expect(withPart(draft, ['name'], undefined)).toEqual({ list: draft.list });
    expect(withPart(draft, ['deep', 'er'], 'x')).toMatchObject({ deep: { er: 'x' } });
    expect(draft).toEqual({ name: 'a', list: [{ x: '1' }, { x: '2' }] });
  });

  test('says the same when it is absent as when it is empty', () => {
    expect(isSame(undefined, '')).toBe(true);
    expect(isSame({ value: '1', low: '' }, { value: '1' })).toBe(true);
    expect(isSame([], ['x'])).toBe(false);
    expect(isSame({ value: '1' }, { value: '2' })).toBe(false);
  });
});

describe('a form that somebody else was quicker with', () => {
  const group = fc.dictionary(fc.constantFrom('a', 'b', 'c'), fc.constantFrom('', '1', '2', '3'), {
    noNullPrototype: true,
  });

  test('has what the other changed where it was not touched, and what was typed where it was', () => {
    fc.assert(
      fc.property(group, group, group, (draft, shown, now) => {
        const result = rebased(draft, shown, now);
        for (const name of ['a', 'b', 'c']) {
          const isUntouched = isSame(draft[name], shown[name]);
          expect(isSame(result.draft[name], isUntouched ? now[name] : draft[name])).toBe(true);
        }
      }),
    );
  });

  test('names exactly the fields that both changed, each otherwise', () => {
    fc.assert(
      fc.property(group, group, group, (draft, shown, now) => {
        const both = ['a', 'b', 'c'].filter(
          (name) =>
            !isSame(draft[name], shown[name]) && !isSame(now[name], shown[name]) && !isSame(draft[name], now[name]),
        );
        expect(rebased(draft, shown, now).clashes.sort()).toEqual(both);
      }),
    );
  });
});

describe('a field', () => {
  const only = text('cooling', { only: { field: 'type', in: ['chiller'] } });

  test('is there for the types it belongs to and no others', () => {
    expect(isThere(only, { type: 'chiller' })).toBe(true);
    expect(isThere(only, { type: 'heater' })).toBe(false);
    expect(isThere(only, {})).toBe(false);
  });

  test('stands first when it is needed, asked for, or named so for the type', () => {
    const draft: DraftGroup = { type: 'heater' };
    expect(isFirst(text('a'), draft)).toBe(false);
    expect(isFirst(text('a', { optional: false }), draft)).toBe(true);
    expect(isFirst(text('a', { asked: 'The review asks for it.' }), draft)).toBe(true);
    expect(isFirst(text('a', { first: { field: 'type', in: ['heater'] } }), draft)).toBe(true);
    expect(isFirst(text('a', { first: { field: 'type', in: ['light'] } }), draft)).toBe(false);
  });

  test('that may be left out and holds others is left out at first', () => {
    const wall: Field = { ...FRAME, name: 'wall', label: 'Wall', kind: 'group', fields: [text('x')] };
    expect(emptyGroup([text('a'), wall])).toEqual({ a: '' });
    expect(emptyGroup([{ ...wall, optional: false }])).toEqual({ wall: { x: '' } });
  });
});

test('a key made from a name is one the facility file takes', () => {
  expect(keyFrom('Heater 2 (left)')).toBe('heater-2-left');
  expect(keyFrom('Bœuf à l’école')).toBe('b-uf-a-l-ecole');
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme' }), (name) => {
      expect(keyFrom(name)).toMatch(/^$|^[a-z0-9]+(?:-[a-z0-9]+)*$/);
    }),
  );
});
