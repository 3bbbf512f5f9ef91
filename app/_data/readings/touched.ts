import 'server-only';
import { newId } from '../new-id';
import { arrayText, type Asking } from './asking';

/** The channel on which whoever works out what follows from readings hears of them; the site's id is what it hears. */
export const TOUCHED_CHANNEL = 'holdfast_touched';

const HOUR_MS = 3_600_000;

/** Instants of a sensor between which readings were stored, ms since 1970. */
export interface Touched {
  sensorId: string;
  fromMs: number;
  toMs: number;
}

const INSTANTS = (n: number) =>
  `ARRAY(SELECT to_timestamp(u.at / 1000.0) FROM unnest($${n}::float8[]) WITH ORDINALITY AS u(at, n) ORDER BY u.n)`;
const ADD = `
  INSERT INTO reading_touched (site_id, id, sensor_ids, froms, tos)
  SELECT $1::uuid, $2::uuid, $3::uuid[], ${INSTANTS(4)}, ${INSTANTS(5)}
  RETURNING pg_notify($6, $1::text)::text AS told`;

/**
 * Says where readings were stored, once the transaction is kept: in which hours, and from when to when in each.
 *
 * @param kept   readings that were stored or corrected
 */
export async function touch(
  asking: Asking,
  siteId: string,
  kept: readonly { sensorId: string; at: Date }[],
): Promise<void> {
  const hours = new Map<string, Touched>();
  for (const { sensorId, at } of kept) {
    const atMs = at.getTime();
    const key = `${sensorId} ${Math.floor(atMs / HOUR_MS)}`;
    const known = hours.get(key);
    if (!known) hours.set(key, { sensorId, fromMs: atMs, toMs: atMs });
    else {
      known.fromMs = Math.min(known.fromMs, atMs);
      known.toMs = Math.max(known.toMs, atMs);
    }
  }
  await touchStretches(asking, siteId, [...hours.values()]);
}

/** The same for stretches that are known. */
export async function touchStretches(asking: Asking, siteId: string, touched: readonly Touched[]): Promise<void> {
  if (touched.length === 0) return;
  await asking(ADD, [
    siteId,
    newId(),
    arrayText(touched.map(({ sensorId }) => sensorId)),
    arrayText(touched.map(({ fromMs }) => fromMs)),
    arrayText(touched.map(({ toMs }) => toMs)),
    TOUCHED_CHANNEL,
  ]);
}

/** Rows taken at once: a turn stays short. */
const ROWS = 200;
/** Hours of sensors in them: of readings every 10 s, 170 000. */
const MOST_HOURS = 480;

interface Row {
  id: string;
  sensorIds: string[];
  froms: number[];
  tos: number[];
}

const MS = (column: string) =>
  `ARRAY(SELECT (extract(epoch FROM u.at) * 1000)::float8 FROM unnest(${column}) WITH ORDINALITY AS u(at, n) ORDER BY u.n)`;
const TAKE = `
  SELECT id, sensor_ids AS "sensorIds", ${MS('froms')} AS froms, ${MS('tos')} AS tos FROM reading_touched
   WHERE site_id = $1::uuid ORDER BY id LIMIT ${ROWS}`;

/** Takes what was touched at a site, as it came. @returns the rows it came in, and the stretches, those of a sensor and hour as one */
export async function takeTouched(
  asking: Asking,
  siteId: string,
): Promise<{ ids: string[]; touched: Touched[]; isMore: boolean }> {
  const waiting = (await asking(TAKE, [siteId])) as unknown as Row[];
  const rows = bearable(waiting);
  const merged = new Map<string, Touched>();
  for (const { sensorIds, froms, tos } of rows)
    for (const [i, sensorId] of sensorIds.entries())
      merge(merged, { sensorId, fromMs: froms[i] ?? 0, toMs: tos[i] ?? 0 });
  return {
    ids: rows.map(({ id }) => id),
    touched: [...merged.values()],
    isMore: rows.length < waiting.length || waiting.length === ROWS,
  };
}

/** As many as make a short turn, one at least: a row may be of a year. */
function bearable(rows: readonly Row[]): Row[] {
  let hours = 0;
  return rows.filter(({ froms, tos }, i) => {
    hours += froms.reduce((sum, from, n) => sum + ((tos[n] ?? from) - from) / HOUR_MS, 0);
    return i === 0 || hours <= MOST_HOURS;
  });
}

function merge(merged: Map<string, Touched>, one: Touched): void {
  const key = `${one.sensorId} ${Math.floor(one.fromMs / HOUR_MS)}`;
  const known = merged.get(key);
  if (!known) merged.set(key, { ...one });
  else {
    known.fromMs = Math.min(known.fromMs, one.fromMs);
    known.toMs = Math.max(known.toMs, one.toMs);
  }
}

/** Removes what was dealt with. */
export async function removeTouched(asking: Asking, siteId: string, ids: readonly string[]): Promise<void> {
  if (ids.length === 0) return;
  await asking('DELETE FROM reading_touched WHERE site_id = $1::uuid AND id = ANY($2::uuid[])', [
    siteId,
    arrayText([...ids]),
  ]);
}
