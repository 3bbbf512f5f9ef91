import { checkReferences } from '#core/facility/check-references';
import type { Facility } from '#core/facility/facility';
import { reviewSystem } from '#core/review/review-system';
import { gravity } from '#core/review/verdict';
import { checkAnswers } from '#core/start/check-answers';
import type { StartAnswers } from '#core/start/answers';
import { startSystem } from '#core/start/start-system';
import { startAnswersShape } from '#shape/start/start-answers';
import { readFacility } from '#shape/facility/read-facility';
import { writeFacility } from '#shape/facility/write-facility';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { facility } from '../../_support/build-facility';
import { REVIEWED_ON } from '../../_support/build-system';
import { anyAnswers } from './any-answers';

const site = facility({ systems: [] });
const [room] = site.rooms;
const [circuit] = site.circuits;
if (!(room && circuit)) throw new Error('the base site has a room and a circuit');

/** A reef of 400 L over a sump, with everything a plain one has. */
const REEF: StartAnswers = {
  what: { name: 'Shop reef', kind: 'reef', room: room.key, salinity: 35 },
  tanks: { role: 'display', count: 1, volumeL: 400, depthMm: 500, cover: 'open' },
  sump: { volumeL: 100, depthMm: 300, pumps: 1, flowLPerH: 2500 },
  heat: { keptAtC: 25, by: 'hard-wired', heaters: { count: 1, eachW: 600 } },
  movement: { circulation: { eachTank: 1, flowLPerH: 3000 }, skimmer: 'yes' },
  topOff: { from: 'reservoir', holdsL: 40, by: 'hard-wired' },
  animals: [{ group: 'Reef fish', count: 12, eachG: 15 }],
  power: { heat: circuit.key, pumps: circuit.key },
};

function started(answers: StartAnswers): { site: Facility; review: ReturnType<typeof reviewSystem> } {
  const system = startSystem(answers, []);
  const whole = { ...site, systems: [system] };
  return { site: whole, review: reviewSystem(whole, system, REVIEWED_ON) };
}

const welded = ({ review }: ReturnType<typeof started>, column: 'claimed' | 'tested' = 'claimed') => {
  const found = review.cases.find(({ id }) => id.startsWith('heater-on:'));
  if (!found) throw new Error('no heater that welds on');
  return found[column].verdict;
};

describe('a system made of answers', () => {
  test('is one that a facility file may hold, whatever is answered', () => {
    fc.assert(
      fc.property(anyAnswers(site), (answers) => {
        expect(startAnswersShape.parse(answers)).toEqual(answers);
        expect(checkAnswers(answers)).toEqual([]);
        const whole = { ...site, systems: [startSystem(answers, [])] };
        expect(checkReferences(whole)).toEqual([]);
        expect(readFacility(writeFacility(whole))).toEqual({ ok: true, value: whole });
      }),
      { numRuns: 60 },
    );
  });

  test('can be reviewed, with no figure missing and not one case without a verdict for want of one', () => {
    fc.assert(
      fc.property(anyAnswers(site), (answers) => {
        const { review } = started(answers);
        for (const { claimed } of review.cases) expect(claimed.reason ?? '').not.toMatch(/^not known/);
      }),
      { numRuns: 6 },
    );
  });

  test('claims no protection that nobody was asked about', () => {
    const { equipment, safeguards, alarms } = startSystem(REEF, []);
    expect([safeguards, alarms]).toEqual([[], []]);
    for (const { plan } of equipment) expect(plan).toMatchObject({ cutOuts: [], interlocks: [], states: [] });
    for (const { plan } of equipment) expect(plan.lostSensing).toBeUndefined();
  });

  test('says of every figure that it was entered, or where its default comes from', () => {
    const [display, , reservoir] = startSystem(REEF, []).tanks;
    expect(display?.surfaceM2).toEqual({
      value: 0.8,
      origin: 'entered',
      source: 'its water divided by its depth, both entered',
    });
    expect(reservoir?.surfaceM2).toMatchObject({ origin: 'default', source: expect.stringContaining('no source') });
  });

  test('takes a key that is free', () => {
    expect(startSystem(REEF, ['shop-reef', 'shop-reef-2']).key).toBe('shop-reef-3');
  });
});

describe('what the review makes of answers', () => {
  test('a heater of 600 W on 500 L without a cut-out is found, and answered by one that opens at 27 °C', () => {
    const bare = started(REEF);
    expect(gravity(welded(bare))).toBeLessThanOrEqual(gravity('some-hours'));
    expect(bare.review.findings[0]?.grade).toBe('high');
    const cutOut = { aboveC: 27, reset: 'manual' } as const;
    const heat = { keptAtC: 25, by: 'hard-wired', heaters: { count: 1, eachW: 600, cutOut } } as const;
    const guarded = started({ ...REEF, heat });
    expect(gravity(welded(guarded))).toBeGreaterThan(gravity(welded(bare)));
    expect(welded(guarded, 'tested'), 'as long as nobody has tested it').toBe(welded(bare, 'tested'));
  });

  test('heaters with thermostats of their own do not share a probe; by a controller they do', () => {
    const probes = (by: 'hard-wired' | 'controller') =>
      startSystem({ ...REEF, heat: { keptAtC: 25, by, heaters: { count: 2, eachW: 150 } } }, []).sensors.filter(
        ({ quantity }) => quantity === 'temperature',
      ).length;
    expect([probes('hard-wired'), probes('controller')]).toEqual([2, 1]);
  });
});

describe('answers that contradict each other', () => {
  const watch = { probe: 'own', answeredBy: 'rota' } as const;
  test.each<[string, Partial<StartAnswers>]>([
    ['heat', { heat: { keptAtC: 25, by: 'controller' } }],
    [
      'heat.heaters.cutOut.aboveC',
      {
        heat: {
          keptAtC: 25,
          by: 'controller',
          heaters: { count: 1, eachW: 9, cutOut: { aboveC: 25, reset: 'manual' } },
        },
      },
    ],
    ['watch', { watch }],
    ['watch.aboveC', { watch: { ...watch, aboveC: 20, belowC: 22 } }],
    ['watch.probe', { watch: { ...watch, aboveC: 27, probe: 'regulating' } }],
    ['animals.1.group', { animals: [...REEF.animals, ...REEF.animals] }],
  ])('%s is named', (path, given) => {
    expect(checkAnswers({ ...REEF, ...given }).map((fault) => fault.path)).toEqual([path]);
    expect(checkAnswers(REEF)).toEqual([]);
  });
});
