import { beforeAll, expect, test } from 'vitest';
import { keepLayout } from '#data/readings/file-layouts';
import { storeReadings } from '#data/readings/store-readings';
import { newId } from '#data/new-id';
import { makeFeed } from '#data/rota/feeds';
import { inTransaction } from '#data/transaction';
import { acknowledgeAlarm } from '#server/alarms/acknowledge-alarm';
import { getAlarm } from '#server/alarms/get-alarm';
import { judgeSite } from '#server/alarms/judge-site';
import { rightAgain } from '#server/alarms/right-again';
import { noteAlarm } from '#server/alarms/note-alarm';
import { now } from '#server/clock';
import type { Who } from '#server/gate/who';
import { getNewIncident } from '#server/incidents/get-new-incident';
import { investigate } from '#server/incidents/investigate';
import { logEntry } from '#server/incidents/log-entry';
import { openIncident } from '#server/incidents/open-incident';
import { withdrawEntry } from '#server/incidents/withdraw-entry';
import { endReadingSource } from '#server/readings/end-source';
import { lookAtFile } from '#server/readings/file/look-at-file';
import { nameSensor } from '#server/readings/name-sensor';
import { endFeedOf } from '#server/rota/make-feed';
import { readFeed } from '#server/rota/read-feed';
import { beginRound } from '#server/rounds/begin-round';
import { enter } from '#server/rounds/enter';
import { enterRest } from '#server/rounds/enter-rest';
import { getRound } from '#server/rounds/get-round';
import { lookAgain } from '#server/rounds/look-again';
import { signRound } from '#server/rounds/sign-round';
import { beginStateOf } from '#server/states/begin-state';
import { endStateOf } from '#server/states/end-state';
import { putOffStateOf } from '#server/states/put-off-state';
import { investigateRequest } from '#shape/incidents/investigate-request';
import { logRequest } from '#shape/incidents/log-request';
import { openRequest } from '#shape/incidents/place';
import { lookRequest } from '#shape/readings/file-requests';
import { enterRequest } from '#shape/rounds/requests';
import { feedAddress } from '#shape/rota/feed';
import { beginRequest, endRequest, putOffRequest } from '#shape/states/requests';
import { freshDatabase } from '../_support/database';
import { siteWithRoundDue } from '../_support/due-round';
import { anAccount } from '../_support/signed-in';
import { aSource, post } from '../_support/sources';
import { keep, stored } from '../_support/stored';
import { fingerprint } from './walk/fingerprint';

const { query } = freshDatabase();
/** Where everything is, and where whoever asks may do everything. */
const [HERE, THERE] = ['north', 'south'] as const;
const ids: Record<'round' | 'alarm' | 'line' | 'run' | 'source' | 'sensor' | 'layout' | 'feed' | 'system', string> = {
  round: '',
  alarm: '',
  line: '',
  run: newId(),
  source: '',
  sensor: '',
  layout: '',
  feed: '',
  system: '',
};
let feedToken = '';
let stranger: Who;
let number = 0;

function must<T>(answer: { ok: true; value: T } | { ok: false; reason: unknown }): T {
  if (!answer.ok) throw new Error(JSON.stringify(answer.reason));
  return answer.value;
}

beforeAll(async () => {
  const { facility, due } = siteWithRoundDue();
  for (const key of [HERE, THERE]) await keep({ ...facility, site: { ...facility.site, key, name: key } });
  const { siteId } = await stored(HERE);
  const account = await anAccount();
  const owner: Who = { id: account, name: 'Owner', everywhere: null, at: { [HERE]: 'admin' } };
  stranger = { id: await anAccount(), name: 'Stranger', everywhere: null, at: { [THERE]: 'admin' } };
  ids.system = facility.systems[0]?.key ?? '';
  const { rows } = await query(`SELECT id FROM sensor WHERE site_id = $1 AND quantity = 'temperature'`, [siteId]);
  ids.sensor = rows[0].id;
  await judgeSite(siteId, now());
  const hot = { sensorId: ids.sensor, value: 29, quality: 'good' as const, origin: 'device' as const };
  await storeReadings(siteId, [{ ...hot, at: now() }], { receivedAt: now() });
  await judgeSite(siteId, new Date(now().getTime() + 70_000));
  ids.alarm = (await query('SELECT id FROM alarm_occurrence')).rows[0].id;
  ids.round = must(await beginRound(owner, { site: HERE, slot: facility.rounds[0]?.key ?? '', due })).round;
  const open = { site: HERE, entry: newId(), title: 'Too warm', alarm: ids.alarm };
  ({ number } = must(await openIncident(owner, openRequest.parse(open))));
  ids.line = newId();
  const log = { site: HERE, number, entry: ids.line, kind: 'log', text: 'The heater is hot.', source: 'witness' };
  must(await logEntry(owner, logRequest.parse(log)));
  const state = { state: 'water-change', lasts: '1', unit: 'hours' };
  const begun = beginRequest.parse({ site: HERE, system: ids.system, entry: ids.run, ...state });
  must(await beginStateOf(owner, begun));
  ids.source = (await aSource(siteId)).id;
  const layout = lookRequest.shape.draft.parse(JSON.stringify(LAYOUT));
  ids.layout = await keepLayout(siteId, { name: 'logger', layout: layout as never }, account, now());
  const feed = await inTransaction((tx) => makeFeed(tx, siteId, { accountId: account, scope: 'everybody' }, now()));
  [ids.feed, feedToken] = [feed.id, feed.token];
  must(await openIncident(stranger, openRequest.parse({ site: THERE, entry: newId(), title: 'Own' })));
});

const LAYOUT = {
  encoding: 'utf-8',
  delimiter: ',',
  head: ['time', 'temperature'],
  hasUnitsRow: false,
  decimal: '.',
  time: { as: 'text', date: 0, order: 'ymd' },
  zone: 'UTC',
  midnight: 'real',
  missing: [],
  columns: [],
  flags: {},
  goodFrom: null,
};
const FILE = 'time,temperature\n2026-01-05 08:00,24.5\n2026-01-05 09:00,24.6\n';

/** Everything that takes an id, asked at the own site with ids of the other one. */
const asked: Record<string, () => Promise<{ ok: boolean }>> = {
  acknowledge: () => acknowledgeAlarm(stranger, { site: THERE, occurrence: ids.alarm, page: 'alarm' }),
  'that it is right again': () => rightAgain(stranger, { site: THERE, occurrence: ids.alarm, note: 'x' }),
  note: () => noteAlarm(stranger, { site: THERE, occurrence: ids.alarm, note: 'x' }),
  alarm: () => getAlarm(stranger, { site: THERE, occurrence: ids.alarm }),
  'an incident from an alarm': () =>
    openIncident(stranger, openRequest.parse({ site: THERE, entry: newId(), title: 'x', alarm: ids.alarm })),
  'the form of it': () => getNewIncident(stranger, { site: THERE, alarm: ids.alarm, system: undefined }),
  'a correction of a line': () =>
    logEntry(stranger, logRequest.parse({ ...own(), kind: 'log', text: 'x', source: 'witness', ...corrects() })),
  'taking a line back': () => withdrawEntry(stranger, { ...own(), number: 1, ...corrects() }),
  'a figure of a sensor': () =>
    logEntry(
      stranger,
      logRequest.parse({ ...own(), kind: 'measurement', units: 'metric', [`figure.temperature.${ids.sensor}`]: '20' }),
    ),
  'a safeguard in an incident': async () =>
    investigate(
      stranger,
      investigateRequest.parse({
        ...own(),
        kind: 'safeguard',
        safeguard: await safeguardId(),
        did: 'failed',
        evidence: 'x',
      }),
    ),
  round: () => getRound(stranger, { site: THERE, round: ids.round }),
  'a line of a round': () =>
    enter(stranger, enterRequest.parse({ site: THERE, round: ids.round, check: 'x', entry: newId(), notDone: 'x' })),
  'the rest of a place': () => enterRest(stranger, { site: THERE, round: ids.round, place: 1, notDone: 'x' }),
  signature: () => signRound(stranger, { site: THERE, round: ids.round }),
  'second look': () => lookAgain(stranger, { site: THERE, round: ids.round }),
  'the end of a state': () =>
    endStateOf(
      stranger,
      endRequest.parse({ site: THERE, system: ids.system, run: ids.run, entry: newId(), note: 'x' }),
    ),
  'a state put off': () =>
    putOffStateOf(
      stranger,
      putOffRequest.parse({ ...{ site: THERE, system: ids.system, run: ids.run, entry: newId() }, ...longer }),
    ),
  'the end of a source': () => endReadingSource(stranger, { site: THERE, source: ids.source }),
  'a name for a sensor': () => nameSensor(stranger, { site: THERE, name: 'probe 1', sensor: ids.sensor }),
  layout: () => lookAtFile(stranger, lookRequest.parse({ site: THERE, file: FILE, layout: ids.layout })),
  'the end of a calendar': () => endFeedOf(stranger, { site: THERE, feed: ids.feed }),
  'a calendar by its word at another site': async () =>
    readFeed({} as never, feedAddress.parse({ token: `${(await stored(THERE)).siteId}.${feedToken}.ics` })),
};
const longer = { lasts: '5', unit: 'hours', note: 'x' };
const own = () => ({ site: THERE, number: '1' as never, entry: newId() });
const corrects = () => ({ supersedes: ids.line, reason: 'x' });
const safeguardId = async (): Promise<string> => {
  const { siteId } = await stored(HERE);
  return (await query('SELECT id FROM safeguard WHERE site_id = $1 LIMIT 1', [siteId])).rows[0].id;
};

test.each(Object.entries(asked))('of another site: %s is refused, and nothing changes', async (_, ask) => {
  const before = await fingerprint(query);
  const answer = await ask();
  expect(answer).toMatchObject({ ok: false });
  expect(JSON.stringify(answer)).not.toMatch(/"not-allowed"|heater is hot|Too warm/);
  expect(await fingerprint(query)).toEqual(before);
});

test('a token of one site names no sensor of another, and with another site in it opens nothing', async () => {
  const [here, there] = [(await stored(HERE)).siteId, (await stored(THERE)).siteId];
  const { token } = await aSource(there);
  const record = [{ n: `${ids.system}/display-temperature`, v: 1 }];
  expect((await post(token.replace(there.replaceAll('-', ''), here.replaceAll('-', '')), record)).status).toBe(401);
  expect((await post(token, record)).status).toBe(200);
  const { rows } = await query('SELECT count(*)::int AS n FROM reading WHERE site_id = $1', [here]);
  expect(rows[0].n).toBe(1);
});
