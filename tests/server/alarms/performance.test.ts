import { beforeAll, expect, test, vi } from 'vitest';
import { acknowledgeAlarm } from '#server/alarms/acknowledge-alarm';
import { getPerformance } from '#server/alarms/get-performance';
import { now } from '#server/clock';
import { freshDatabase } from '../../_support/database';
import { after as at, alarmSite, always, warm, withAlarms } from './alarm-site';

vi.mock('#server/clock', async (original) => {
  const real = await original<typeof import('#server/clock')>();
  return { now: vi.fn(real.now) };
});

const { query } = freshDatabase();
let page: Awaited<ReturnType<typeof getPerformance>>;

beforeAll(async () => {
  const site = await alarmSite(query, withAlarms([warm({ deadBand: 0 })], [always('robin')]));
  const robin = await site.member('Robin', 'aquarist', 'robin');
  await site.judge(0);
  for (const [atS, value] of [
    [10, 27],
    [15, 25],
    [300, 27],
    [315, 25],
    [320, 27],
    [330, 25],
    [340, 27],
  ] as const) {
    await site.send([[atS, value]]);
    await site.judge(atS);
  }
  vi.mocked(now).mockReturnValue(at(340 + 240));
  const last = (await site.open()).at(-1);
  await acknowledgeAlarm(robin, { site: site.siteKey, occurrence: last?.id ?? '', page: 'alarm' });
  vi.mocked(now).mockReturnValue(at(3 * 86_400));
  page = await getPerformance(robin, { site: site.siteKey });
});

test('the figures of a site are those of what happened there', () => {
  if (!page.ok) throw new Error('no page');
  const { figures, days } = page.value;
  expect([days, figures.load.count, figures.load.mostInTenMin]).toEqual([30, 4, 4]);
  expect(figures.chattering).toMatchObject([{ name: 'Too warm', system: 'Tank 1', times: 1 }]);
  expect(figures.fleeting).toMatchObject([{ times: 1 }]);
  expect(figures.stale).toMatchObject([{ times: 1 }]);
  expect(figures.answerers).toMatchObject([{ name: 'Robin', load: { count: 4 }, atNightPerWeek: 0 }]);
  expect(figures.answering).toMatchObject({ all: { cases: 1, medianMin: 4 }, never: 3, returnedBefore: 3 });
});
