import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import type { Check } from '#core/rounds/check';
import { LineFields, type Mode } from '#ui/rounds/line-fields';

const about = { noun: 'stock' as const, system: 'reef', key: 'wrasse' };
const heads: Check = { key: 'x', about, what: 'Wrasse', why: 'one may be missing', kind: 'head-count', expected: 12 };

/**
 * The Enter key presses the first submit button of a form in tree order (HTML Standard, "Implicit submission"): it must send
 * nothing but what was typed.
 */
describe('the Enter key on a line of a round', () => {
  test.each<[string, Mode]>([
    ['does not say that all were seen where a count was typed', 'look'],
    ['does not choose a reason where another was typed', 'not-done'],
  ])('%s', (_, mode) => {
    const props = { check: heads, units: 'metric' as const, mode, setMode: () => undefined, isBusy: false };
    const buttons = renderToStaticMarkup(createElement(LineFields, props)).match(/<button[^>]*type="submit"[^>]*>/g);
    expect(buttons?.length).toBeGreaterThan(1);
    expect(buttons?.[0]).not.toMatch(/name=|value=/);
  });
});
