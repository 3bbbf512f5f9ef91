import { carries, demandDrift } from '#core/review/combined/drift';
import { describe, expect, test } from 'vitest';
import { airBlower } from '../../../_support/build-equipment';
import { facility } from '../../../_support/build-facility';
import { smallSystem } from '../../../_support/small-facility';
import { unreviewed } from './looking';

/** One tank with two blowers of these strengths, L/h a stone. */
const aired = (...strengths: number[]) => {
  const base = smallSystem();
  const [heats] = base.equipment;
  const stones = [{ tank: 'display', count: 2 }];
  const blowers = strengths.map((gasTransferLPerH, i) =>
    airBlower({ key: `blower-${i}`, name: `Blower ${i}`, tank: 'display', stones, gasTransferLPerH }),
  );
  return unreviewed(facility({ systems: [{ ...base, equipment: heats ? [heats, ...blowers] : blowers }] }));
};
const only = (look: ReturnType<typeof aired>) => {
  const [found] = demandDrift(look);
  if (!found) throw new Error('the tank has a limit on oxygen');
  return found;
};

describe('the biomass at which the night is no longer carried', () => {
  test('is found with the strongest unit lost, and more is left where the weaker one is stronger', () => {
    const [weak, strong] = [only(aired(400, 20)), only(aired(400, 100))];
    expect(weak).toMatchObject({ tank: 'display', unit: 'blower-0', nowKg: 0.06 });
    expect(strong.unit).toBe('blower-0');
    expect(strong.carriesKg).toBeGreaterThan(weak.carriesKg);
  });

  test('is where it turns: a little less is carried, a little more is not, and so with everything below and above', () => {
    const look = aired(400, 20);
    const { unit, nowKg, carriesKg } = only(look);
    const times = carriesKg / nowKg;
    for (const part of [0.2, 0.5, 0.9, 1]) expect(carries(look, 'display', unit, part * times), `${part}`).toBe(true);
    for (const part of [1.03, 1.2, 2, 5]) expect(carries(look, 'display', unit, part * times), `${part}`).toBe(false);
  });

  test('is not asked where no air is given or nothing lives', () => {
    expect(demandDrift(aired())).toEqual([]);
    const empty = smallSystem();
    expect(demandDrift(unreviewed(facility({ systems: [{ ...empty, stock: [] }] })))).toEqual([]);
  });
});
