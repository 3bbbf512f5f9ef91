import 'server-only';
import { setTimeout as wait } from 'node:timers/promises';
import type { ReadRecord } from '#core/readings/arrived';
import { type BrokerKey, noteTally, type Tally } from '#data/brokers/hold';
import { noteNodes } from '#data/brokers/nodes';
import { keepUnacked, storedBefore, type Unacked } from '#data/brokers/unacked';
import { announceGone } from '#data/readings/arrivals';
import { codeOf } from '#data/readings/asking';
import { sensorsByName } from '#data/readings/taking-in';
import { now } from '../clock';
import { logError } from '../log';
import { takeIn } from '../readings/take-in';
import type { Life, Waiting } from './intake';
import type { MessageReader, Read } from './read-message';

/** ms after which an acknowledgement on a connection that lives is sure to have arrived: two keep-alives. */
const SURE_MS = 120_000;
const FIELDS = { name: 'topic', time: 'time', value: 'payload', unit: 'unit' };
/** Classes of what PostgreSQL refuses because of what it was given (SQLSTATE 21, 22, 23): the same again is refused again. */
const GIVEN_WRONG = /^2[123]/;

/**
 * Stores what messages say, in one transaction with which messages they were.
 *
 * @param life   what is known of the connection
 * @throws          when the database does not answer; then nothing of it was stored
 */
export async function storeBatch(
  broker: BrokerKey,
  reader: MessageReader,
  batch: readonly Waiting[],
  life: Life,
): Promise<void> {
  const fresh = await withoutRepeats(broker, batch, life);
  const tally = await storeFresh(broker, fresh, life.sinceMs);
  const at = now();
  for (const { read } of fresh) if (read.gone) await tellGone(broker, reader, read.gone);
  await noteTally(broker, { ...tally, messages: batch.length }, at);
  await noteNodes(broker, reader.nodes.takeNotes(), at);
}

/** Without what was stored already, which the broker sends again because it heard of no acknowledgement. */
async function withoutRepeats(broker: BrokerKey, batch: readonly Waiting[], life: Life): Promise<Waiting[]> {
  const asked = life.mayRepeat ? batch : batch.filter(({ isAgain }) => isAgain);
  const known = await storedBefore(broker, unackedOf(asked));
  return batch.filter(({ isAgain, packetId }) => {
    if (packetId === undefined) return true;
    const isRepeat = (isAgain || life.mayRepeat) && known.has(packetId);
    // The first that is none: what comes after it was never sent before, unless it says so.
    if (!isRepeat) life.mayRepeat = false;
    return !isRepeat;
  });
}

async function storeFresh(broker: BrokerKey, fresh: readonly Waiting[], sinceMs: number): Promise<Tally> {
  const retained = fresh.reduce((sum, { read }) => sum + read.retained, 0);
  const records = fresh.flatMap(({ read }) => read.records);
  const tally = { messages: 0, stored: 0, refused: 0, retained };
  if (records.length === 0) return tally;
  try {
    return { ...tally, ...(await storeRecords(broker, records, unackedOf(fresh), sinceMs)) };
  } catch (error) {
    if (!GIVEN_WRONG.test(codeOf(error))) throw error;
    // One that the database cannot hold must keep none of the others out, and not come for ever.
    if (fresh.length > 1) return await inHalves(broker, fresh, sinceMs);
    logError('a message of a broker cannot be stored', error, { source: broker.sourceId });
    return { ...tally, refused: records.length };
  }
}

async function inHalves(broker: BrokerKey, fresh: readonly Waiting[], sinceMs: number): Promise<Tally> {
  const middle = Math.ceil(fresh.length / 2);
  const first = await storeFresh(broker, fresh.slice(0, middle), sinceMs);
  const second = await storeFresh(broker, fresh.slice(middle), sinceMs);
  return {
    messages: 0,
    stored: first.stored + second.stored,
    refused: first.refused + second.refused,
    retained: first.retained + second.retained,
  };
}

async function storeRecords(
  broker: BrokerKey,
  records: readonly ReadRecord[],
  messages: readonly Unacked[],
  sinceMs: number,
): Promise<{ stored: number; refused: number }> {
  const receivedAt = now();
  const sure = receivedAt.getTime() - SURE_MS;
  const answers = await takeIn(
    records,
    {
      siteId: broker.siteId,
      cameBy: broker.sourceId,
      receivedAt,
      correct: false,
      also: (asking) => keepUnacked(asking, broker, messages, receivedAt, sinceMs < sure ? new Date(sure) : null),
    },
    FIELDS,
  );
  const refused = answers.filter(({ result }) => result === 'refused' || result === 'conflict').length;
  return { stored: answers.filter(({ result }) => result === 'stored').length, refused };
}

function unackedOf(messages: readonly Waiting[]): Unacked[] {
  return messages.flatMap(({ packetId, digest }) => (packetId === undefined ? [] : [{ packetId, digest }]));
}

/** Says that sensors are gone, and every other of a gateway that nothing else here speaks for. */
async function tellGone(broker: BrokerKey, reader: MessageReader, names: NonNullable<Read['gone']>): Promise<void> {
  const byName = await sensorsByName(broker.siteId);
  const lost = names.flatMap((name) => byName.get(name) ?? []);
  const there = new Set(reader.nodes.namesThere().map((name) => byName.get(name)?.gatewayId));
  const gateways = new Set(
    lost.flatMap(({ gatewayId }) => (gatewayId === null || there.has(gatewayId) ? [] : [gatewayId])),
  );
  const gone = { sensors: lost.map(({ id }) => id), gateways: [...gateways] };
  await announceGone(broker.siteId, gone, now());
  // Whatever comes next has come later, also by a clock of milliseconds.
  await wait(2);
}
