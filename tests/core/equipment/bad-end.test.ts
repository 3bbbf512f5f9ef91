import { describe, expect, test } from 'vitest';
import { resolveSystem } from '#core/equipment/resolve';
import type { Side } from '#core/equipment/take';
import type { Facility } from '#core/facility/facility';
import type { Harm } from '#core/review/result';
import type { Upset } from '#core/faults/upset';
import { levelControl, plan, topOff } from '../../_support/build-equipment';
import { facility } from '../../_support/build-facility';
import { reservoir, sump, system, tank } from '../../_support/build-system';
import { courseOf, onlySystem, profileWith, timeTo } from '../simulate/course';
import { vague } from './vague';

interface Case {
  what: Harm['what'];
  direction: 'above' | 'below';
  limit: number;
  /** Sides on which the fault is tried; on one of them each figure's bad end must be no better. */
  sides: Side[];
  hours: number;
  fault: (upset: Upset) => void;
}

const CASES: [string, Case][] = [
  [
    'overheating under a welded heater',
    {
      what: 'temperature',
      direction: 'above',
      limit: 27.5,
      sides: ['warm'],
      hours: 60,
      fault: (upset) => {
        upset.health.set('heater-1', 'stuck-on');
        upset.health.set('heater-2', 'stuck-on');
      },
    },
  ],
  [
    'cooling with both heaters dead',
    {
      what: 'temperature',
      direction: 'below',
      limit: 23.5,
      sides: ['cold'],
      hours: 90,
      fault: (upset) => {
        upset.health.set('heater-1', 'dead');
        upset.health.set('heater-2', 'dead');
      },
    },
  ],
  [
    'suffocation in a power cut',
    {
      what: 'oxygen',
      direction: 'below',
      limit: 3.5,
      sides: ['warm'],
      hours: 40,
      fault: (upset) => {
        upset.utilityDown = true;
      },
    },
  ],
  [
    'dilution by a top-off stuck on',
    {
      what: 'salinity',
      direction: 'below',
      limit: 34,
      sides: ['warm', 'cold'],
      hours: 60,
      fault: (upset) => upset.probes.set('sump-level', { as: 'stuck', value: -1000 }),
    },
  ],
  [
    'ammonia with the return stopped and most bacteria with it',
    {
      what: 'ammonia',
      direction: 'above',
      limit: 0.02,
      sides: ['warm', 'cold'],
      hours: 60,
      fault: (upset) => upset.health.set('return-pump', 'dead'),
    },
  ],
  [
    'salting up with a top-off stuck off',
    {
      what: 'salinity',
      direction: 'above',
      limit: 35.3,
      sides: ['cold'],
      hours: 160,
      fault: (upset) => upset.health.set('top-off', 'dead'),
    },
  ],
];

/** The base reef with every figure known to a quarter, no cut-outs, a slow top-off without run limit, and one limit. */
function siteOf({ what, direction, limit }: Case): Facility {
  const quantity = what as 'temperature' | 'oxygen' | 'salinity' | 'ammonia';
  const base = system();
  return vague(
    facility({
      profiles: [profileWith({ quantity, [direction]: limit })],
      systems: [
        {
          ...base,
          tanks: [tank(), sump({ rimMm: 400 }), reservoir({ volumeL: 40 })],
          equipment: base.equipment.map((e) =>
            e.type === 'heater'
              ? { ...e, plan: { ...e.plan, cutOuts: [], interlocks: [] } }
              : e.type === 'top-off'
                ? topOff({ flowLPerH: 6, plan: plan({ regulation: levelControl({ runLimitMin: undefined }) }) })
                : e,
          ),
          stock: base.stock.map((s) => ({ ...s, profile: 'exact' })),
          alarms: [],
          states: [],
        },
      ],
    }),
  );
}

describe('the bad end of a figure is never the better one, for any figure there is', () => {
  test.each(CASES)('%s', (_, one) => {
    const site = siteOf(one);
    // From one and the same water: where in its cycle a thermostat stood is not what a figure's range is about.
    const time = (side: Side, only?: string) =>
      timeTo(
        courseOf(site, { hours: one.hours, side, only, fresh: true, fault: one.fault, options: { stopAt: 'animals' } }),
        one.what,
        one.direction,
      );
    const nominal = time('nominal');
    expect(nominal).toBeLessThan(one.hours * 3600);
    const paths = [...new Set(resolveSystem(site, onlySystem(site), 'nominal').notes.map((note) => note.path))];
    expect(paths.length).toBeGreaterThan(30);
    const better = paths.filter((path) => Math.min(...one.sides.map((side) => time(side, path))) > nominal + 1);
    expect(better).toEqual([]);
    for (const side of one.sides.slice(0, 1)) expect(time(side)).toBeLessThan(0.9 * nominal);
  });
});
