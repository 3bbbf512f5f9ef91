import { silencedOf } from '#core/review/combined/silenced';
import { twoSteps } from '#core/review/combined/two-step';
import { describe, expect, test } from 'vitest';
import { airBlower, plan, returnPump } from '../../../_support/build-equipment';
import { circuit, facility, room } from '../../../_support/build-facility';
import { alarm, safeguard, sensor, stock, system } from '../../../_support/build-system';
import { withSystem } from '../../../_support/with-part';
import { looking } from './looking';

const blowers = [airBlower(), airBlower({ key: 'standby', name: 'Standby blower' })];
const watch = (equipment: string) =>
  alarm({ key: `${equipment}-watts`, on: { kind: 'watts', equipment }, delayS: 60, deadBand: 0 });
/** Nothing is told of what they draw without a meter. */
const sensors = [
  ...system().sensors,
  ...blowers.map(({ key: equipment }) =>
    sensor({ key: `meter-${equipment}`, quantity: 'watts', tank: undefined, equipment }),
  ),
];
/** Many fish in a warm room, not fed: air is what keeps them, and one blower of two is enough. */
const aired = (alarms = [watch('air-blower'), watch('standby')]) => ({
  ...withSystem({ equipment: blowers, sensors, stock: [stock({ count: 60 })], alarms, states: [], feedGPerDay: 0 }),
  rooms: [room({ temperatureC: 25 })],
  rounds: [],
  site: facility().site,
});
const second = (site: Parameters<typeof looking>[0], after: string) =>
  twoSteps(looking(site)).find(({ id }) => id === after);
const BOTH = 'two-step:air-stops:air-blower+air-stops:standby:normal';

describe('a standby that carries the duty and fails as well', () => {
  test('is answered where an alarm watches it', () => {
    const one = second(aired(), BOTH);
    expect(one).toMatchObject({ alone: 'holds', verdict: 'covered', harm: { what: 'oxygen' } });
    expect(one?.because).not.toContain('no alarm');
  });

  test('gives no warning where only the duty blower is watched: that call was acknowledged', () => {
    const one = second(aired([watch('air-blower')]), BOTH);
    expect(one).toMatchObject({ alone: 'holds', verdict: 'no-warning', spareS: null });
    expect(one?.because).toContain('and no alarm watches it');
  });

  test('is noticed in the other order, whose second is the watched one', () => {
    const other = 'two-step:air-stops:standby+air-stops:air-blower:normal';
    expect(second(aired([watch('air-blower')]), other)?.verdict).toBe('covered');
  });
});

describe('what stood in for the utility', () => {
  const powered = {
    ...aired(),
    systems: withSystem({
      equipment: [airBlower(), returnPump({ plan: plan() })],
      stock: [stock({ count: 60 })],
      feedGPerDay: 0,
      states: [],
      alarms: [watch('air-blower')],
    }).systems,
  };

  test('a battery that runs out does harm from then on, and is no harm while it lasts', () => {
    const one = second(powered, 'two-step:utility-fails:harbour+battery-runs-out:harbour:normal');
    expect(one?.harm).toMatchObject({ class: 'animals' });
  });

  test('a generator that dies after whoever came has left', () => {
    const generator = { safeguard: 'generator', startsAfterS: { value: 30, origin: 'entered' as const } };
    const site = {
      ...powered,
      site: { ...powered.site, generator },
      circuits: facility().circuits.map((one) => circuit({ ...one, backedBy: ['generator'] })),
      safeguards: [...facility().safeguards, safeguard({ key: 'generator', kind: 'standby-power' })],
    };
    const one = second(site, 'two-step:utility-fails:harbour+generator-dies:harbour:normal');
    expect(one?.harm).toMatchObject({ class: 'animals' });
    expect(second({ ...site, site: powered.site }, one?.id ?? '')).toBeUndefined();
  });
});

test('a fault whose only call travels through a silent router is told by nobody', () => {
  const look = looking({ ...aired(), site: { ...facility().site, watchdog: undefined } } as ReturnType<typeof aired>);
  const both = look.tried.find(({ case: c }) => c.id === 'circuit-trips:air:normal');
  if (!both) throw new Error('the circuit of the air can trip');
  expect(both.case.claimed.verdict).toBe('covered');
  expect(silencedOf(look, both)).toEqual(
    expect.arrayContaining([expect.objectContaining({ alone: 'covered', verdict: 'no-warning' })]),
  );
});
