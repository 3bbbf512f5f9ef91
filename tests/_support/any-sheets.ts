import type { OpeningHours } from '#core/facility/site';
import type { System } from '#core/facility/system';
import type { RoundSheet, SheetLine } from '#core/rounds/round-sheet';
import { SIGNERS } from '#core/rounds/round-sheet';
import fc from 'fast-check';
import { anyName, maybe } from './any-figure';
import { anyTime } from './any-plan';

const yes = () => maybe(fc.constant(true as const));
const range = () =>
  maybe(fc.record({ from: maybe(fc.integer({ min: -9, max: 0 })), to: maybe(fc.integer({ min: 1, max: 9 })) }));

/** Rules with a first day that is one of their own. */
const RULES: [string, string][] = [
  ['FREQ=DAILY', '2026-03-01'],
  ['FREQ=WEEKLY;BYDAY=MO,TH', '2026-03-02'],
  ['FREQ=MONTHLY;BYDAY=1FR', '2026-03-06'],
  ['FREQ=MONTHLY;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=-1', '2026-03-31'],
  ['FREQ=YEARLY;BYMONTH=6;BYMONTHDAY=1', '2026-06-01'],
];

/** Kept sheets over some systems, one at least. */
export function anySheets(systems: readonly System[]): fc.Arbitrary<RoundSheet[]> {
  const sheet = fc.record({
    name: anyName(),
    schedule: fc.constantFrom(...RULES).chain(([rule, from]) =>
      fc.record({
        rule: fc.constant(rule),
        from: fc.constant(from),
        until: maybe(fc.constant('2027-01-01')),
        times: fc.array(
          fc.record({
            at: anyTime(),
            anchor: maybe(fc.constantFrom('opening' as const, 'closing' as const)),
            afterMin: maybe(fc.integer({ min: -90, max: 90 })),
          }),
          { minLength: 1, maxLength: 3 },
        ),
        except: maybe(fc.constant<string[]>(['2026-12-25'])),
        notOnHolidays: yes(),
      }),
    ),
    graceMin: maybe(fc.integer({ min: 0, max: 9999 })),
    signedBy: maybe(fc.constantFrom(...SIGNERS)),
    secondSignature: yes(),
    lines: fc.array(anyLine(systems), { minLength: 1, maxLength: 4 }),
  });
  return fc.array(sheet, { minLength: 1, maxLength: 3 }).map((sheets) =>
    sheets.map((one, index) => ({
      ...one,
      key: `sheet-${index}`,
      lines: one.lines.map((line, at) => ({ ...line, key: `${line.key}-${at}` })),
    })),
  );
}

function anyLine(systems: readonly System[]): fc.Arbitrary<SheetLine> {
  const place = fc.constantFrom(
    { system: undefined, tank: undefined },
    ...systems.flatMap(({ key, tanks }) => [
      { system: key, tank: undefined },
      ...tanks.map((tank) => ({ system: key, tank: tank.key })),
    ]),
  );
  const own = { key: fc.constant('own'), what: anyName(), why: maybe(anyName()), secondSignature: yes() };
  const option = (key: string, usual: boolean) => ({ key, name: key, usual });
  const kinds = fc.oneof(
    fc.record({ ...own, kind: fc.constantFrom('yes-no' as const, 'text' as const, 'photo' as const) }),
    fc.record({ ...own, kind: fc.constant('figure' as const), unit: fc.constant('bar'), usual: range() }),
    fc.record({ ...own, kind: fc.constant('doses' as const), dose: maybe(anyName()), usual: range() }),
    fc.record({
      ...own,
      kind: fc.constant('choice' as const),
      options: fc.constant([option('clear', true), option('blocked', false)]),
    }),
  );
  const described = fc.record({
    kind: fc.constant('described' as const),
    key: fc.constant('a/system/floor'),
    what: maybe(anyName()),
    usual: range(),
    secondSignature: yes(),
  });
  return fc.oneof(
    described,
    fc.tuple(kinds, place).map(([line, at]) => ({ ...line, ...at })),
  ) as fc.Arbitrary<SheetLine>;
}

/** When a site opens. */
export function anyHours(): fc.Arbitrary<OpeningHours[]> {
  return fc.array(
    fc.record({
      days: fc.constantFrom(['mon' as const], ['sat' as const, 'sun' as const]),
      opens: anyTime(),
      closes: anyTime(),
    }),
    { minLength: 1, maxLength: 2 },
  );
}
