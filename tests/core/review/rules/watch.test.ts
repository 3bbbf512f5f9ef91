import { contextOf } from '#core/review/context';
import { paperworkFindings } from '#core/review/paperwork';
import { assemble } from '#core/review/review-system';
import {
  changed,
  type Change,
  example,
  withEquipment,
  withoutAlarms,
  withPlan,
  withSite,
  withSystem,
} from '#core/review/rules/example/example';
import { entered } from '#core/review/rules/example/proven';
import { untestedFinding } from '#core/review/untested';
import type { AlarmDefinition } from '#core/alarms/definition';
import type { Safeguard } from '#core/plans/safeguard';
import { describe, expect, test } from 'vitest';
import { causes, finds, findsIn, shown } from './finds';

const alarm = (key: string, given: Partial<AlarmDefinition>): Change =>
  withSystem(({ alarms }) => ({ alarms: changed(alarms, key, given) }));
const safeguard = (key: string, given: Partial<Safeguard>): Change =>
  withSystem(({ safeguards }) => ({ safeguards: changed(safeguards, key, given) }));

describe('an alarm on a limit', () => {
  const set = (above: number): Change =>
    alarm('too-warm', { on: { kind: 'sensor', sensor: 'display-temperature', above } });

  test('must call before harm begins', () => {
    expect(causes('no-high-temperature-alarm', set(28.9))).toEqual([]);
    const [breach] = finds('no-high-temperature-alarm', set(29));
    expect(breach?.consequence).toBe('The alarm Too warm calls when harm has begun, not before.');
    expect([shown(breach, 'alarm'), shown(breach, 'limit of harm')]).toEqual(['29 °C', '29 °C']);
  });

  test('is measured by the default profile of the kind where no animals are described', () => {
    const empty = withSystem(() => ({ stock: [], kind: 'cold-marine' }));
    expect(shown(finds('no-high-temperature-alarm', empty)[0], 'limit of harm')).toBe('17 °C');
  });

  test('may be one of several, of which one is early enough', () => {
    const late = withSystem(({ alarms }) => ({
      alarms: alarms.flatMap((one) =>
        one.key === 'too-warm'
          ? [{ ...one, key: 'late', on: { kind: 'sensor' as const, sensor: 'sump-temperature', above: 35 } }, one]
          : [one],
      ),
    }));
    expect(causes('no-high-temperature-alarm', late)).toEqual([]);
  });

  test('on the wrong side, or of the wrong quantity, is none', () => {
    const [breach] = finds(
      'no-low-temperature-alarm',
      alarm('too-cold', { on: { kind: 'sensor', sensor: 'oxygen', below: 24 } }),
    );
    expect(breach?.consequence).toBe('Nobody is called before harm begins.');
    expect(shown(breach, 'limit of harm')).toBe('22 °C');
  });

  test('counts although nobody answers it, which is another matter', () => {
    const nobody = alarm('too-warm', { answeredBy: 'nobody' });
    expect(causes('no-high-temperature-alarm', nobody)).toEqual([]);
    expect(causes('alarm-unanswered', nobody)).toEqual(['Too warm']);
  });
});

describe('an alarm on oxygen', () => {
  const none = withoutAlarms('oxygen-low');
  const fish = (count: number): Change =>
    withSystem(({ stock }) => ({ stock: stock.map((group) => ({ ...group, count })) }));

  test('is asked where the animals would use it up within two hours', () => {
    expect(causes('no-oxygen-alarm', none, fish(50))).toEqual([]);
    expect(causes('no-oxygen-alarm', none, fish(70))).toEqual(['Oxygen']);
    expect(causes('no-oxygen-alarm', fish(70))).toEqual([]);
  });

  test('is not asked where nobody knows how heavy they are', () => {
    const heavy = withSystem(({ stock }) => ({
      stock: stock.map((group) => ({ ...group, eachG: { value: null, origin: 'unknown' as const } })),
    }));
    expect(causes('no-oxygen-alarm', none, fish(1000), heavy)).toEqual([]);
  });
});

describe('the return', () => {
  test('is watched by flow, or by the power of every pump whose healthy range is known', () => {
    const noFlow = withoutAlarms('return-lost');
    expect(causes('no-return-alarm', noFlow)).toEqual([]);
    expect(causes('no-return-alarm', noFlow, withEquipment('return', { wattsRange: undefined }))).toEqual([
      'Return pump',
    ]);
    const tooMuch = alarm('return-lost', { on: { kind: 'sensor', sensor: 'flow', above: 4000 } });
    expect(causes('no-return-alarm', tooMuch, withoutAlarms('return-watts'))).toEqual(['Return pump']);
    const metered = alarm('return-watts', { on: { kind: 'sensor', sensor: 'return-watts', below: 30 } });
    expect(causes('no-return-alarm', noFlow, metered)).toEqual([]);
    const second = withSystem(({ equipment }) => ({
      equipment: equipment.flatMap((one) =>
        one.key === 'return' ? [one, { ...one, key: 'second', name: 'Second' }] : [one],
      ),
    }));
    expect(causes('no-return-alarm', noFlow, second)).toEqual(['Second']);
  });

  test('asks for nothing where there is none', () => {
    const none = withSystem(({ equipment, tanks }) => ({
      equipment: equipment.filter(({ tank }) => tank !== 'sump'),
      tanks: tanks.filter(({ role }) => role !== 'sump'),
      alarms: [],
    }));
    for (const id of ['no-return-alarm', 'no-level-alarm', 'no-leak-alarm']) expect(causes(id, none)).toEqual([]);
    expect(causes('no-high-temperature-alarm', none)).toEqual(['Too warm']);
  });
});

test('a high level in the sump, or a low one in the display, does not show that the sump runs low', () => {
  const high = alarm('sump-low', { on: { kind: 'sensor', sensor: 'sump-level', above: 40 } });
  expect(causes('no-level-alarm', high)).toEqual(['Sump']);
  const elsewhere = withSystem(({ sensors }) => ({ sensors: changed(sensors, 'sump-level', { tank: 'display' }) }));
  const [breach] = finds('no-level-alarm', elsewhere);
  expect(shown(breach, 'from the running level down to where the return pump draws air')).toBe('100 mm');
});

test('salinity is read by an alarm, or by a round that passes this system, and only where water is salt', () => {
  const none = withoutAlarms('salinity-low');
  const away = withSite(({ rounds }) => ({ rounds: rounds.map((round) => ({ ...round, systems: ['another'] })) }));
  expect(causes('salinity-unwatched', away)).toEqual([]);
  expect(causes('salinity-unwatched', none, away)).toEqual(['Reef']);
  expect(
    causes(
      'salinity-unwatched',
      none,
      away,
      withSystem(() => ({ kind: 'tropical-fresh' })),
    ),
  ).toEqual([]);
});

describe('somebody answers', () => {
  const named = (...people: string[]): string[] =>
    finds('alarm-unanswered', alarm('too-warm', { answeredBy: people })).map(({ consequence }) => consequence);
  const third: Change = withSite(({ people }) => ({
    people: [...people, { key: 'third', name: 'Third keeper', role: 'aquarist' }],
  }));

  test('when one of those named is on some shift', () => {
    expect(named('second', 'gone')).toEqual([]);
    expect(named('gone')).toEqual(['It calls gone, who is on no shift of the rota.']);
    expect(named()).toEqual(['Nobody is named to answer it.']);
    const [breach] = finds('alarm-unanswered', third, alarm('too-warm', { answeredBy: ['third'] }));
    expect(breach?.consequence).toBe('It calls Third keeper, who is on no shift of the rota.');
    expect(shown(breach, 'answered by')).toBe('third');
  });

  test('when the rota does, even with hours that nobody covers: those are the site’s own finding', () => {
    expect(
      causes(
        'alarm-unanswered',
        withSite(() => ({ shifts: [] })),
      ),
    ).toEqual([]);
  });

  test('to the watch outside the site as well', () => {
    const outside = withSite(({ site }) => ({ site: { ...site, watchdog: { afterMin: 15, answeredBy: 'nobody' } } }));
    expect(causes('alarm-unanswered', outside)).toEqual(['Watch outside the site']);
  });
});

describe('a feeding pause', () => {
  const endsBy = (given: object): Change =>
    withSystem(({ states }) => ({
      states: states.map((one) => (one.name === 'feeding' ? { ...one, ...given } : one)),
    }));
  const person = endsBy({ endsBy: 'person', endSafeguard: undefined });

  test('needs an end that does not hang on a person, if it pauses anything', () => {
    expect(finds('pause-ended-by-person', person)[0]?.consequence).toBe(
      'Until somebody ends it, Return pump and Skimmer stay off.',
    );
    expect(causes('pause-ended-by-person', endsBy({ endsBy: 'person' }))).toEqual([]);
    const nothing = ['return', 'skimmer'].map((key) => withPlan(key, () => ({ states: [] })));
    expect(causes('pause-ended-by-person', person, ...nothing)).toEqual([]);
  });

  test('is the only state of which that is asked: hands are in the water in the others', () => {
    expect(example().system.states.some(({ name, endsBy: by }) => name === 'water-change' && by === 'person')).toBe(
      true,
    );
    expect(causes('pause-ended-by-person')).toEqual([]);
  });
});

describe('a safeguard', () => {
  test('is untested when it was never tried, failed last time, or was tried too long ago', () => {
    const words = (given: Partial<Safeguard>) =>
      finds('safeguard-untested', safeguard('run-limit', given))[0]?.consequence;
    expect(words({ tests: [] })).toBe('It has never been tested.');
    expect(words({ tests: [{ on: '2026-05-01', result: 'failed' }] })).toBe('It failed when it was last tested.');
    expect(words({ testEveryDays: 90 })).toBe('Its last test is older than its interval.');
    expect(words({ testEveryDays: 91 })).toBeUndefined();
  });

  test('that is off is reported as off until its day is over, and not as untested', () => {
    const off = (until: string) =>
      safeguard('run-limit', { tests: [], off: { by: 'x', why: 'pump away.', since: '2026-05-01', until } });
    expect(causes('safeguard-off', off('2026-06-01'))).toEqual(['Run limit of the top-off']);
    expect(finds('safeguard-off', off('2026-06-01'))[0]?.consequence).toBe(
      'It does nothing meanwhile. Reason given: pump away.',
    );
    expect(causes('safeguard-untested', off('2026-06-01'))).toEqual([]);
    expect(causes('safeguard-off', off('2026-05-31'))).toEqual([]);
    expect(causes('safeguard-untested', off('2026-05-31'))).toEqual(['Run limit of the top-off']);
  });

  test('of the site concerns a system whose circuits it backs, and a battery elsewhere does not', () => {
    const battery = withSite(({ circuits, safeguards }) => ({
      circuits: [...circuits, { key: 'yard', name: 'Yard', backedBy: ['ups'], upsSafeguard: 'yard-battery' }],
      safeguards: [
        ...safeguards.map((one) => ({ ...one, tests: [] })),
        { key: 'yard-battery', name: 'Battery of the yard', kind: 'standby-power', testEveryDays: 30, tests: [] },
      ],
    }));
    expect(causes('safeguard-untested', battery)).toEqual(['Batteries', 'Outside watch']);
  });
});

test('a battery that a generator or the outside watch also leans on concerns every system', () => {
  const yard = (site: object): Change =>
    withSite((facility) => ({
      site: { ...facility.site, ...site },
      circuits: [...facility.circuits, { key: 'yard', name: 'Yard', backedBy: ['ups'], upsSafeguard: 'yard' }],
      safeguards: [
        ...facility.safeguards,
        { key: 'yard', name: 'Yard set', kind: 'standby-power', testEveryDays: 30, tests: [] },
      ],
    }));
  expect(causes('safeguard-untested', yard({}))).toEqual([]);
  expect(causes('safeguard-untested', yard({ generator: { safeguard: 'yard' } }))).toEqual(['Yard set']);
  expect(
    causes('safeguard-untested', yard({ watchdog: { afterMin: 15, answeredBy: 'rota', safeguard: 'yard' } })),
  ).toEqual(['Yard set']);
});

describe('the findings of the paperwork', () => {
  test('come one for each remedy, under the gravest grade of its lines', () => {
    const context = example(
      withSystem(({ tanks }) => ({ tanks: changed(tanks, 'display', { outletMm: entered(300) }) })),
      withPlan('skimmer', () => ({ states: [] })),
      withPlan('return', () => ({ states: [] })),
      withPlan('top-off', () => ({ states: [] })),
    );
    const findings = paperworkFindings(context);
    expect(findings.map(({ id, grade, lines }) => [id, grade, lines.length])).toEqual([
      ['do:off-in-state', 'medium', 2],
      ['do:room-in-sump', 'low', 1],
    ]);
    expect(findings[0]?.lines.map(({ from }) => from)).toEqual([
      { rule: 'skimmer-in-water-change' },
      { rule: 'top-off-in-water-change' },
    ]);
  });

  test('tell of untested safeguards once, in the finding that also says what testing wins', () => {
    const context = example(safeguard('run-limit', { tests: [] }));
    expect(paperworkFindings(context)).toEqual([]);
    const findings = assemble(context, []).findings;
    expect(findings.map(({ id, lines }) => [id, lines.map(({ cause }) => cause)])).toEqual([
      ['do:test-safeguards', ['Run limit of the top-off']],
    ]);
    expect(untestedFinding(example(), [])).toBeNull();
  });

  test('depend on the day', () => {
    const { facility, system } = example();
    expect(findsIn('calibration-overdue', contextOf(facility, system, '2026-12-01'))).toEqual([]);
    expect(findsIn('calibration-overdue', contextOf(facility, system, '2026-12-02'))).toHaveLength(8);
    expect(findsIn('calibration-overdue', contextOf(facility, system, '2026-12-02'))[0]?.consequence).toContain(
      'for a day',
    );
  });
});
