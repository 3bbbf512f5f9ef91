import { createHash } from 'node:crypto';
import { resolveSystem } from '#core/equipment/resolve';
import { noUpset } from '#core/faults/upset';
import { judge } from '#core/readings/judge';
import { contextOf } from '#core/review/context';
import { nominal } from '#core/simulate/nominal';
import { STRIDE, TEMPERATURE } from '#core/simulate/plant';
import { describe, expect, test } from 'vitest';
import { DEMO_DATE, demoOn } from '../../seed/demo';
import { reachOf } from '../../seed/past/instrument';
import { type Past, pastOf } from '../../seed/past/past';
import { demoSite, systemOf } from './demo-site';

const NOW = Date.parse(`${DEMO_DATE}T14:07:00Z`);
const known = new Map<string, Past>();
const past = (key: string): Past => {
  const made = known.get(key) ?? pastOf(demoSite(key), DEMO_DATE, NOW);
  known.set(key, made);
  return made;
};
const seriesOf = (key: string) => [...past(key).systems.values()].flatMap(({ series }) => series);
const digest = ({ systems, lives, rounds, tests, incidents }: Past) =>
  createHash('sha256')
    .update(
      JSON.stringify([
        [...systems.values()].map(({ series, states }) => [series, states]),
        lives,
        rounds,
        tests,
        incidents,
      ]),
    )
    .digest('hex');

describe('the past of a demonstration', () => {
  test('is the same for the same minute, down to the ids', () => {
    expect(digest(pastOf(demoSite('mill-lane'), DEMO_DATE, NOW))).toBe(digest(past('mill-lane')));
  });

  test('moves with the day it is shown on, and keeps its stories on their weekdays', () => {
    const later = pastOf(demoOn(demoSite('mill-lane'), '2027-03-04'), '2027-03-04', Date.parse('2027-03-04T09:30:00Z'));
    const [incident] = later.incidents;
    expect(new Date(incident?.openedMs ?? 0).getUTCDay()).toBe(0);
    expect(incident?.openedMs ?? 0).toBeLessThan(later.untilMs);
    expect(later.untilMs - (incident?.openedMs ?? 0)).toBeLessThan(10 * 86_400_000);
  });

  test.each(['quay-street', 'mill-lane'])('tells nothing of %s that is still to come', (key) => {
    const { untilMs, rounds, lives } = past(key);
    expect(Math.max(...seriesOf(key).map(({ atMs }) => atMs.at(-1) ?? 0))).toBeLessThanOrEqual(untilMs);
    expect(rounds.flatMap(({ entries }) => entries).filter(({ recordedMs }) => recordedMs > untilMs)).toEqual([]);
    expect(lives.filter(({ raised }) => raised.raisedMs > untilMs)).toEqual([]);
  });
});

describe('the readings', () => {
  test('differ from the model as described by more than any probe does', () => {
    const facility = demoSite('quay-street');
    const system = systemOf(facility, 'show-reef');
    const { credit, profileOf } = contextOf(facility, system, DEMO_DATE);
    const resolved = resolveSystem(facility, system, 'nominal');
    const model = nominal({
      ...{ facility, system, resolved, profileOf, upset: noUpset(), credited: credit.claimed },
      ...{ state: 'normal' as const, snapshot: null },
    });
    const coldest = model.dayLow[0] ?? 0;
    const read = seriesOf('quay-street').find(({ sensor }) => sensor === 't-display')?.values ?? [];
    const below = read.filter((value) => value < coldest - reachOf('temperature'));
    expect(read.length).toBeGreaterThan(8000);
    // On cold days the heater cannot hold what the described one does.
    expect(below.length).toBeGreaterThan(50);
    expect(model.record.knots.value(0, STRIDE * 0 + TEMPERATURE)).toBeGreaterThan(coldest - 0.5);
  });

  test.each(['quay-street', 'mill-lane'])(
    'of %s stay within the limits of every alarm but where one was raised',
    (key) => {
      const { facility, lives } = past(key);
      const raisedOn = new Set(lives.map(({ raised }) => `${raised.system}/${raised.alarm}`));
      for (const system of facility.systems)
        for (const { key: alarm, on } of system.alarms) {
          if (on.kind !== 'sensor' || raisedOn.has(`${system.key}/${alarm}`)) continue;
          const read = seriesOf(key).find((one) => one.system === system.key && one.sensor === on.sensor)?.values ?? [];
          const beyond = read.filter((value) => value > (on.above ?? Infinity) || value < (on.below ?? -Infinity));
          expect(beyond, `${system.key} ${alarm}`).toEqual([]);
        }
    },
  );

  test.each(['quay-street', 'mill-lane'])('of %s are judged as they would be when they arrive', (key) => {
    const { facility } = past(key);
    for (const { system, sensor, values, odd } of seriesOf(key)) {
      const quantity = systemOf(facility, system).sensors.find((one) => one.key === sensor)?.quantity ?? 'leak';
      const doubtful = values.flatMap((value, i) => (judge(quantity, value, { value }).quality === 'good' ? [] : [i]));
      expect(doubtful, `${system} ${sensor}`).toEqual([...odd.keys()]);
    }
  });
});

describe('the rounds', () => {
  test.each(['quay-street', 'mill-lane'])(
    'of %s are walked but for some, late at times, and looked at again but for the last days',
    (key) => {
      const { rounds, untilMs } = past(key);
      const late = rounds.filter(({ walk, begunMs }) => begunMs >= walk.lateAt);
      expect(rounds.length).toBeGreaterThan(90);
      expect(late.length).toBeGreaterThan(0);
      expect(late.length).toBeLessThan(rounds.length / 5);
      const looked = rounds.flatMap(({ secondLook }) => secondLook ?? []);
      expect(looked.length).toBeGreaterThan(rounds.length / 4);
      expect(Math.max(...looked.map(({ atMs }) => atMs))).toBeLessThan(untilMs - 3 * 86_400_000);
      expect(rounds.every(({ by, secondLook }) => secondLook?.by !== by)).toBe(true);
    },
  );

  test('hold what was seen of the heater in the window, and nothing that contradicts it', () => {
    const { rounds, incidents } = past('mill-lane');
    const opened = incidents[0]?.openedMs ?? 0;
    const on = rounds.find(({ begunMs, signedMs }) => begunMs < opened && (signedMs ?? 0) > opened - 1_800_000);
    const found = on?.entries.find(({ check }) => check === 'window-tank/equipment/heater/usual');
    expect(found?.value).toEqual({ kind: 'yes-no', asUsual: false });
  });
});
