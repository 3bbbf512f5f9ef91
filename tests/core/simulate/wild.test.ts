import fc from 'fast-check';
import { expect, test } from 'vitest';
import { contextOf } from '#core/review/context';
import { subjectsOf } from '#core/review/subjects';
import { tryAt } from '#core/review/trial';
import { OXYGEN, SALT, STRIDE, TEMPERATURE, VOLUME } from '#core/simulate/plant';
import type { Trial } from '#core/review/trial';
import { REVIEWED_ON } from '../../_support/build-system';
import { onlySystem } from './course';
import { wildSite } from './wild-system';

const SEED = 20_260_604;

/** What no water can be, anywhere in a course; empty when all is well. */
function impossible({ machine, record }: Trial): string[] {
  const { knots } = record;
  const found: string[] = [];
  for (let k = 0; k < machine.plant.nodes; k++) {
    for (let i = 0; i < knots.length && found.length < 3; i++) {
      const [v, t, m, c] = [VOLUME, TEMPERATURE, SALT, OXYGEN].map((offset) => knots.value(i, STRIDE * k + offset));
      const right =
        (v ?? 0) > 0 && Math.abs(t ?? 999) < 150 && (m ?? -1) >= -1e-9 && (c ?? -1) > -1e-3 && (c ?? 99) < 50;
      if (!right) found.push(`node ${k} at ${knots.time(i)} s: ${v} m³, ${t} °C, ${m} kg, ${c} g/m³`);
    }
  }
  return found;
}

test(`no plan and no figure within reason makes a course of events stick, break off or leave what water can be (seed ${SEED})`, () => {
  let [courses, harmed] = [0, 0];
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 1_000_000 }), (seed) => {
      const site = wildSite(seed);
      const context = contextOf(site, onlySystem(site), REVIEWED_ON);
      const view = context.view('nominal');
      for (const subject of subjectsOf(site, onlySystem(site))) {
        const trial = tryAt(context, view, subject, 'claimed', 8);
        expect(impossible(trial), `${subject.fault.id} ${subject.thing.key} ${subject.state}`).toEqual([]);
        courses++;
        if (trial.record.harms.length > 0) harmed++;
      }
    }),
    { numRuns: 6, seed: SEED },
  );
  expect(courses).toBeGreaterThan(200);
  expect(harmed).toBeGreaterThan(50);
});
