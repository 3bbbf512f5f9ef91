import { expect, test } from 'vitest';
import { newId } from '#data/new-id';
import { storeReadingsIn } from '#data/readings/store-readings';
import { addEntries } from '#data/rounds/entries';
import { findRound } from '#data/rounds/round-row';
import { inTransaction } from '#data/transaction';
import { now } from '#server/clock';
import { LOCAL_PERSON } from '#server/gate/who';
import { beginBesides } from '#server/rounds/begin-besides';
import { enter } from '#server/rounds/enter';
import { enterRest } from '#server/rounds/enter-rest';
import { getRound } from '#server/rounds/get-round';
import { signRound } from '#server/rounds/sign-round';
import { enterRequest } from '#shape/rounds/requests';
import { sensor } from '../../_support/build-system';
import { freshDatabase } from '../../_support/database';
import { siteWithRoundDue } from '../../_support/due-round';
import { keep, stored } from '../../_support/stored';

freshDatabase();
const SITE = 'harbour';
const DAY = 86_400_000;
const SENSORS = ['display-temperature', 'second', 'third'];
const LINES = SENSORS.map((key) => `tank-1/sensor/${key}`);

async function besides(): Promise<string> {
  const begun = await beginBesides(LOCAL_PERSON, { site: SITE, slot: 'morning', entry: newId() });
  if (!begun.ok) throw new Error(JSON.stringify(begun.reason));
  return begun.value.round;
}

/** A round of today with the same number on each line, signed: what is asked about it. */
async function askedToday(): Promise<string[]> {
  const round = await besides();
  for (const check of LINES) {
    const typed = { site: SITE, round, check, entry: newId(), number: '25.1', sure: 'yes' };
    await enter(LOCAL_PERSON, enterRequest.parse(typed));
  }
  for (const place of (await findRound((await stored(SITE)).siteId, round))?.sheet.places.keys() ?? [])
    await enterRest(LOCAL_PERSON, { site: SITE, round, place: place + 1, notDone: 'No time' });
  const unsigned = await getRound(LOCAL_PERSON, { site: SITE, round });
  expect(unsigned).toMatchObject({ value: { unmoved: [] } });
  expect(await signRound(LOCAL_PERSON, { site: SITE, round })).toMatchObject({ ok: true });
  const page = await getRound(LOCAL_PERSON, { site: SITE, round });
  return page.ok ? page.value.unmoved.map(({ line }) => line) : [];
}

/** What the sensors read by themselves some seconds before each entry: the later stands beside it. */
async function sensorsRead(siteId: string, round: string, values: readonly number[], sAgo: number): Promise<void> {
  const ids = Object.values((await findRound(siteId, round))?.sheet.sensors ?? {});
  const at = (daysAgo: number) => new Date(now().getTime() - daysAgo * DAY - sAgo * 1000);
  const readings = ids.flatMap((sensorId) =>
    values.map((value, days) => ({
      ...{ sensorId, at: at(days), value, quality: 'good' as const, origin: 'device' as const, isOfPast: true },
    })),
  );
  await inTransaction((tx) =>
    storeReadingsIn(tx, siteId, readings, { cameBy: newId(), receivedAt: now(), correct: false }),
  );
}

test('three numbers that stood still in a week are asked about once their sensors moved, and only on a signed round', async () => {
  const { facility } = siteWithRoundDue();
  const own = facility.systems.map((system) => ({
    ...system,
    sensors: SENSORS.map((key) => sensor({ key, name: key, tank: 'display' })),
  }));
  await keep({ ...facility, systems: own });
  const { siteId } = await stored(SITE);
  const before = await besides();
  const entries = LINES.flatMap((check) =>
    [6, 5, 4, 3, 2, 1].map((days) => ({
      ...{ id: newId(), check, atMs: now().getTime() - days * DAY, by: 'local', recordedAt: now() },
      ...{ value: { kind: 'number' as const, value: 25.1, quality: 'good' as const }, notDone: null },
      ...{ note: null, supersedes: null, reason: null },
    })),
  );
  await inTransaction((tx) => addEntries(tx, siteId, before, entries));
  // No sensor has read anything by itself, and nothing is known of the weeks before.
  expect(await askedToday()).toEqual([]);
  await sensorsRead(siteId, before, [25.1, 25.12, 25.08, 25.1, 25.11, 25.09, 25.1], 60);
  expect(await askedToday()).toEqual([]);
  await sensorsRead(siteId, before, [25.6, 24.6, 25.5, 24.7, 25.6, 24.8, 25.2], 30);
  expect(await askedToday()).toEqual(LINES);
});
