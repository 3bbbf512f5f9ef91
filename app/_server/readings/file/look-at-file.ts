import 'server-only';
import { createHash } from 'node:crypto';
import type { z } from 'zod';
import type { FileFacts } from '#core/readings/file/facts';
import type { DateOrder, FileRow, LayoutDraft } from '#core/readings/file/layout';
import { isScale, needsNoZone, placesOf, proposeLayout } from '#core/readings/file/propose';
import { type Question, questionsOf, settled } from '#core/readings/file/questions';
import { ok, type Result, refused } from '#core/result';
import { importedBefore, type KeptLayout, layoutsAt } from '#data/readings/file-layouts';
import { type NamedSensor, sensorsAt } from '#data/readings/sensor-names';
import { lookRequest } from '#shape/readings/file-requests';
import type { Refusal } from '../../gate/refusal';
import { siteFor } from '../../gate/site-for';
import type { Who } from '../../gate/who';
import { fits, laidOver } from './layout-fits';
import { type PreviewRow, previewRows } from './preview-rows';
import { type LoggerFile, readLoggerFile } from './read-logger-file';
import { sensorFinder } from './sensor-finder';

/** One column of a file, for somebody who says what it is. */
export interface LookedColumn {
  place: number;
  name: string;
  /** Unit that stands in a row of its own; empty without one. */
  unit: string;
  filled: number;
  zeros: number;
  /** What stands in it, the first few distinct ones. */
  examples: string[];
  /** Whether what stands in it are numbers on a scale. */
  isScale: boolean;
  /** Whether the time stands in it. */
  isTime: boolean;
}

/** What is known of a file, and what has to be said of it. */
export interface FileLook {
  name: string;
  /** Rows that hold data. */
  rows: number;
  preamble: string[];
  draft: LayoutDraft;
  columns: LookedColumn[];
  /** Orders in which every date can be meant. */
  orders: DateOrder[];
  needsZone: boolean;
  /** Remembered layouts of files like this, and the one the draft is from. */
  alike: { id: string; name: string }[];
  from: { id: string; name: string } | null;
  questions: Question[];
  /** First and last rows as they stand. */
  raw: { first: FileRow[]; last: FileRow[] };
  /** The same as they would be stored; null as long as something has to be said. */
  preview: PreviewRow[] | null;
  sensors: NamedSensor[];
  /** Zone of the site. */
  zone: string;
  /** When these very bytes were taken in, UTC; null when they never were. */
  before: string | null;
}

export const lookAtFileShape = lookRequest;

/** Looks at a file: what it says of itself, what has to be said of it, and how it would be stored. Nothing is kept. */
export async function lookAtFile(
  who: Who,
  { site: key, file, ...asked }: z.output<typeof lookAtFileShape>,
): Promise<Result<FileLook, Refusal>> {
  const found = await siteFor(who, 'take-in-file', key);
  if (!found.ok) return found;
  const read = await readLoggerFile(file.bytes, asked);
  if (!read.ok) return read;
  const { id, zone } = found.value;
  const [sensors, layouts] = await Promise.all([sensorsAt(id), layoutsAt(id)]);
  const { structure } = read.value;
  const alike = layouts.filter(({ layout }) => fits(layout, structure));
  const from = asked.layout === undefined ? undefined : alike.find((one) => one.id === asked.layout);
  if (asked.layout !== undefined && !from) return refused({ why: 'not-found', what: 'layout' });
  // Somebody who says nothing is offered what was said of a file like this, if only one thing was.
  const offered = asked.draft ? undefined : (from ?? (alike.length === 1 ? alike[0] : undefined));
  const sha256 = new Uint8Array(createHash('sha256').update(file.bytes).digest());
  const before = await importedBefore(id, sha256);
  return ok({
    name: file.name,
    ...lookOf(read.value, sensors, asked.draft, offered, zone),
    alike: alike.map(calledOf),
    from: offered ? calledOf(offered) : null,
    zone,
    before: before?.toISOString() ?? null,
  });
}

function lookOf(
  file: LoggerFile,
  sensors: NamedSensor[],
  said: LayoutDraft | undefined,
  offered: KeptLayout | undefined,
  zone: string,
) {
  const { structure, facts, encoding, first, last } = file;
  const { quantityOf, idOf } = sensorFinder(sensors);
  const likely = proposeLayout(structure, facts, encoding, sensors);
  const own = said && fits(said, structure) ? withIds(said, idOf) : offered?.layout;
  const draft = own ? laidOver(own, likely) : likely;
  const questions = questionsOf(draft, facts, quantityOf);
  return {
    rows: facts.rows,
    preamble: structure.preamble,
    draft,
    columns: columnsOf(file),
    orders: facts.orders,
    needsZone: !needsNoZone(draft.time, facts),
    questions,
    raw: { first, last },
    preview: questions.length > 0 ? null : previewRows([...first, ...last], settled(draft, facts), sensors, zone),
    sensors,
  };
}

/** A draft whose sensors stand by their ids, whatever they were called by. */
export function withIds(draft: LayoutDraft, idOf: (name: string) => string): LayoutDraft {
  const columns = draft.columns.map((one) => ({ ...one, sensor: one.sensor === null ? null : idOf(one.sensor) }));
  return { ...draft, columns };
}

/** Examples shown of a column. */
const EXAMPLES = 40;

function columnsOf({ structure, facts }: { structure: LoggerFile['structure']; facts: FileFacts }): LookedColumn[] {
  const times = new Set(placesOf(structure.time));
  return facts.columns.map((column, place) => ({
    place,
    name: structure.head[place] ?? '',
    unit: structure.units[place] ?? '',
    filled: column.filled,
    zeros: column.zeros,
    examples: [...column.words.keys()].slice(0, EXAMPLES),
    isScale: isScale(column),
    isTime: times.has(place),
  }));
}

function calledOf({ id, name }: KeptLayout): { id: string; name: string } {
  return { id, name };
}
