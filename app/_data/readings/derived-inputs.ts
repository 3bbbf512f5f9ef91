import 'server-only';
import type { Quality } from '#core/readings/reading';
import { arrayText, type Asking } from './asking';
import { qualityOf } from './codes';

/** Inputs beside the leading one that a law has at most. */
const BESIDE = [1, 2, 3] as const;

/** A stretch of a derived series that is to be worked out. */
export interface AskedStretch {
  seriesId: string;
  /** Id of the leading sensor, and those beside it with the age they may have, ms. */
  lead: string;
  beside: readonly { sensorId: string; ageMs: number }[];
  fromMs: number;
  toMs: number;
}

/** A value and how far it can be trusted. */
export interface InputValue {
  value: number;
  quality: Quality;
}

/** What the inputs of a series read at an instant of the leading one, and what stands of the series there. */
export interface InputsAt {
  /** Place of the stretch among those asked for. */
  n: number;
  atMs: number;
  lead: InputValue;
  /** In the order asked for; null where nothing is new enough. */
  beside: (InputValue | null)[];
  standing: (InputValue & { revision: number }) | null;
}

const NEWEST = '"at" DESC, origin DESC, revision DESC LIMIT 1';
const beside = (i: number) => `
  LEFT JOIN LATERAL (SELECT value, quality FROM reading WHERE site_id = $1::uuid AND sensor_id = a.in${i}
    AND "at" <= l."at" AND "at" >= l."at" - a.age${i} * interval '1 millisecond' ORDER BY ${NEWEST}) i${i} ON true`;
const READ = `
  SELECT a.n, (extract(epoch FROM l."at") * 1000)::float8 AS "atMs", l.value, l.quality,
         ${BESIDE.map((i) => `i${i}.value AS value${i}, i${i}.quality AS quality${i}`).join(', ')},
         d.value AS value0, d.quality AS quality0, d.revision
    FROM unnest($2::uuid[], $3::uuid[], $4::float8[], $5::float8[],
                ${BESIDE.map((i) => `$${4 + 2 * i}::uuid[], $${5 + 2 * i}::float8[]`).join(', ')}) WITH ORDINALITY
         AS a(series, lead, from_ms, to_ms, ${BESIDE.map((i) => `in${i}, age${i}`).join(', ')}, n)
   CROSS JOIN LATERAL (
     SELECT DISTINCT ON ("at") "at", value, quality FROM reading
      WHERE site_id = $1::uuid AND sensor_id = a.lead
        AND "at" >= to_timestamp(a.from_ms / 1000.0) AND "at" <= to_timestamp(a.to_ms / 1000.0)
      ORDER BY "at", origin DESC, revision DESC) l
   ${BESIDE.map(beside).join('')}
    LEFT JOIN LATERAL (SELECT value, quality, revision FROM reading WHERE site_id = $1::uuid AND sensor_id = a.series
       AND "at" = l."at" ORDER BY revision DESC LIMIT 1) d ON true
   ORDER BY a.n, l."at"`;

type Row = Record<string, number | null> & { n: string; atMs: number };

/**
 * What the inputs of derived series read: at each instant of the leading sensor the newest of each other one, taken then or
 * before and not older than it may be. What comes later changes nothing of what was before it.
 */
export async function inputsOf(
  asking: Asking,
  siteId: string,
  stretches: readonly AskedStretch[],
): Promise<InputsAt[]> {
  if (stretches.length === 0) return [];
  const rows = (await asking(READ, [
    siteId,
    arrayText(stretches.map(({ seriesId }) => seriesId)),
    arrayText(stretches.map(({ lead }) => lead)),
    arrayText(stretches.map(({ fromMs }) => fromMs)),
    arrayText(stretches.map(({ toMs }) => toMs)),
    ...BESIDE.flatMap((i) => [
      arrayText(stretches.map((one) => one.beside[i - 1]?.sensorId ?? null)),
      arrayText(stretches.map((one) => one.beside[i - 1]?.ageMs ?? null)),
    ]),
  ])) as unknown as Row[];
  return rows.flatMap((row) => {
    const n = Number(row.n) - 1;
    const lead = inputIn(row, '');
    const standing = inputIn(row, '0');
    if (!lead) return [];
    const found = (stretches[n]?.beside ?? []).map((_, i) => inputIn(row, String(i + 1)));
    return [
      { n, atMs: row.atMs, lead, beside: found, standing: standing && { ...standing, revision: row.revision ?? 0 } },
    ];
  });
}

/** The value in the columns of a row that end with a mark; null where there is none. */
function inputIn(row: Row, mark: string): InputValue | null {
  const value = row[`value${mark}`];
  return value === null || value === undefined ? null : { value, quality: qualityOf(row[`quality${mark}`]) };
}
