import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test } from 'vitest';
import type { Plan } from '#core/plans/plan';
import type { Custom } from '#core/units/shown';
import { PlanDifferenceTable } from '#ui/plans/plan-lines-table';

const names = Object.fromEntries(
  ['tank', 'equipment', 'sensor', 'alarm', 'round', 'safeguard', 'circuit', 'person'].map((noun) => [noun, String]),
) as unknown as Parameters<typeof PlanDifferenceTable>[0]['speech']['names'];

const planOf = (regulation: Plan['regulation']): Plan => ({ cutOuts: [], interlocks: [], states: [], regulation });
const heat = planOf({ kind: 'thermostat', sensors: ['p'], vote: 'single', lowC: 24, highC: 25, by: 'controller' });
const fill = planOf({ kind: 'level', sensor: 'f', lowMm: -5, highMm: 1, runLimitMin: 15, by: 'controller' });

const shown = (before: Plan, change: object, units: Custom) => {
  const after = planOf({ ...before.regulation, ...change });
  const html = renderToStaticMarkup(
    createElement(PlanDifferenceTable, { before, after, caption: 'Both', speech: { units, names } }),
  );
  return html.replace(/<[^>]*>/g, ' ').replaceAll('\u00a0', ' ');
};

test.each([
  ['a quarter of a degree', heat, { highC: 25.25 }, '24.0 °C to 25.25 °C'],
  ['the shortest run', heat, { minOnS: 60 }, 'runs at least 60 s'],
  ['the shortest pause', heat, { minOffS: 30 }, 'pauses at least 30 s'],
  ['a millimetre', fill, { highMm: 2 }, 'from -5 mm to 2 mm'],
])('two plans that differ by %s are not said to be the same', (_what, before, change, said) => {
  expect(shown(before, change, 'metric')).toContain(said);
  for (const units of ['metric', 'us'] as const) expect(shown(before, change, units)).toMatch(/goes.*comes/s);
});
