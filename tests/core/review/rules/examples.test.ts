import { checkReferences } from '#core/facility/check-references';
import { RULES } from '#core/review/rules/catalogue';
import { example } from '#core/review/rules/example/example';
import type { RuleContext } from '#core/review/rules/rule';
import { describe, expect, test } from 'vitest';

/** Ids of the rules that find something. */
const breached = (context: RuleContext): string[] =>
  RULES.filter((rule) => rule.check(context).length > 0).map(({ id }) => id);

/** Everything a reader is shown of what the rules find. */
const said = (context: RuleContext): string[] =>
  RULES.flatMap((rule) => rule.check(context)).flatMap(({ cause, consequence, figures }) => [
    cause,
    consequence,
    ...figures.flatMap(({ name, value }) => [name, value]),
  ]);

test('the example site passes every rule', () => {
  expect(RULES.length).toBeGreaterThan(30);
  expect(breached(example())).toEqual([]);
});

describe.each(RULES)('$id', (rule) => {
  test('its passing example passes every rule', () => {
    expect(breached(rule.passing())).toEqual([]);
  });

  test('its failing example fails this rule and no other', () => {
    expect(breached(rule.failing())).toEqual([rule.id]);
  });

  test('both of its examples are valid sites', () => {
    expect(checkReferences(rule.passing().facility)).toEqual([]);
    expect(checkReferences(rule.failing().facility)).toEqual([]);
  });

  test('what it says is a whole sentence with figures that can be read', () => {
    const context = rule.failing();
    for (const { cause, consequence, figures } of rule.check(context)) {
      expect(cause).not.toBe('');
      expect(consequence).toMatch(/^\S.*\.$/);
      expect(figures.length).toBeGreaterThan(0);
      // What some read in another unit is a figure with its measure; no sentence holds it.
      const fixed = figures.flatMap(({ value, measure }) => (measure ? [] : [value]));
      for (const words of [consequence, ...fixed]) expect(words).not.toMatch(/\d (°C|K|L|mm|L\/h)(?![\w/])/);
    }
    for (const words of said(context))
      expect(words).not.toMatch(/NaN|undefined|Infinity|null|\bfalse\b|-0\b|\s{2}|^\s*$/);
  });
});
