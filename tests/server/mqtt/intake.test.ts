import { expect, test } from 'vitest';
import { MessageReader } from '#server/mqtt/read-message';
import { Intake } from '#server/mqtt/intake';
import { freshDatabase } from '../../_support/database';
import { describedSite } from '../../_support/described-site';
import { stored } from '../../_support/stored';
import { aBroker, soon } from './broker-site';

const { query } = freshDatabase();
const { anew } = describedSite(query);

test('what waits to be stored is bounded by its readings, and goes on once they are', async () => {
  await anew();
  const { siteId } = await stored('harbour');
  const sourceId = await aBroker(siteId, 1, []);
  const topic = { id: 'x', topic: 'pack', payload: 'senml' as const, field: null, timeField: null, unit: null };
  const life = { sinceMs: 0, mayRepeat: false, waitedUntilMs: 0 };
  const intake = new Intake({ siteId, sourceId }, new MessageReader({ topics: [topic] }), life, () => undefined);
  // Packs of nobody's readings: each of 12,000, as much as a message may well hold.
  const payload = Buffer.from(JSON.stringify(Array.from({ length: 12_000 }, (_, i) => ({ n: `n${i % 5}`, v: 1 }))));
  let acknowledged = 0;
  let next = 0;
  let sent = 0;
  const send = () => {
    sent += 1;
    const delivered = { topic: 'pack', payload, isRetained: false, isAgain: false, packetId: sent };
    const acknowledge = () => {
      acknowledged += 1;
    };
    intake.take({ ...delivered, acknowledge }, () => {
      next += 1;
    });
  };
  while (next === sent && sent < 100) send();
  // The fourth pack was one too many: the broker is made to wait.
  expect([sent, next]).toEqual([4, 3]);
  await soon(async () => acknowledged === 4);
  expect(next).toBe(4);
  await intake.stop();
});
