import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { from as copyFrom } from 'pg-copy-streams';
import { ensureParts } from '#data/readings/parts';
import { pool } from '#data/pool';
import { type NamedSensor, sensorsAt } from '#data/readings/sensor-names';
import { facility } from '../_support/build-facility';
import { aSource, post } from '../_support/sources';
import { keep, stored } from '../_support/stored';
import { onFreshServer } from './fresh-server';

const ROUNDS = 3;
/** Readings of each way in a round. */
const READINGS = 40_000;
/** Records in a body: a minute of a big site's gateway. */
const IN_A_BODY = 1000;
const SECOND_MS = 1000;
const FIRST_MS = Date.UTC(2026, 0, 1);

/** How many readings a second come in by the handler's own path, and by COPY into the same indexed table. */
export async function benchIngest(): Promise<string[]> {
  return await onFreshServer(compared);
}

async function compared(): Promise<string[]> {
  await keep(facility());
  const { siteId } = await stored('harbour');
  const { token } = await aSource(siteId);
  const sensors = (await sensorsAt(siteId)).filter(
    ({ quantity }) => quantity === 'temperature' || quantity === 'watts',
  );
  await ensureParts([new Date(FIRST_MS)]);
  const rates = { own: [] as number[], copy: [] as number[] };
  for (let round = 0; round < ROUNDS; round++) {
    // Instants of their own for each way and round: nothing is there yet.
    rates.own.push(await rate(() => byHandler(token, sensors, round * 2)));
    rates.copy.push(await rate(() => byCopy(siteId, sensors, round * 2 + 1)));
  }
  const [own, copy] = [median(rates.own), median(rates.copy)];
  return [
    `Readings: ${READINGS} of ${sensors.length} sensors, ${IN_A_BODY} in a body; token, parsing, judging, storing, latest, arrival`,
    `  own ${own.toFixed(0)} readings/s`,
    `  one COPY into the same table, nothing judged ${copy.toFixed(0)} readings/s`,
    `  ratio ${((100 * own) / copy).toFixed(0)} % of COPY (aim: 10 %)`,
  ];
}

/** Instant of the reading at a place in the row of one way's. */
function atMs(sensors: number, lap: number, i: number): number {
  return FIRST_MS + (lap * Math.ceil(READINGS / sensors) + Math.floor(i / sensors)) * SECOND_MS;
}

async function byHandler(token: string, sensors: NamedSensor[], lap: number): Promise<void> {
  for (let from = 0; from < READINGS; from += IN_A_BODY) {
    const pack = Array.from({ length: IN_A_BODY }, (_, n) => {
      const { system, key } = sensors[(from + n) % sensors.length] ?? { system: '', key: '' };
      return { n: `${system}/${key}`, v: 25 + (n % 10) / 10, t: atMs(sensors.length, lap, from + n) / SECOND_MS };
    });
    const answer = await post(token, pack);
    const { stored: count } = await answer.json();
    if (count !== IN_A_BODY) throw new Error(`${count} of ${IN_A_BODY} were stored: ${answer.status}`);
  }
}

async function byCopy(siteId: string, sensors: NamedSensor[], lap: number): Promise<void> {
  const received = new Date(FIRST_MS).toISOString();
  const lines = Array.from({ length: READINGS }, (_, i) => {
    const at = new Date(atMs(sensors.length, lap, i)).toISOString();
    return `${siteId}\t${sensors[i % sensors.length]?.id ?? ''}\t${at}\t1\t0\t${25 + (i % 10) / 10}\t0\t\\N\t\\N\t\\N\t${received}\n`;
  });
  const client = await pool().connect();
  try {
    await pipeline(Readable.from([lines.join('')]), client.query(copyFrom('COPY reading FROM STDIN')));
  } finally {
    client.release();
  }
}

async function rate(work: () => Promise<void>): Promise<number> {
  const began = performance.now();
  await work();
  return (READINGS * SECOND_MS) / (performance.now() - began);
}

function median(values: number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}
