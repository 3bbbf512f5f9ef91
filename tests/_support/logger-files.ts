import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { SensorQuantity } from '#core/facility/system';
import type { LayoutDraft } from '#core/readings/file/layout';
import { LOCAL_PERSON } from '#server/gate/who';
import { type FileLook, lookAtFile } from '#server/readings/file/look-at-file';
import { type TakenIn, takeInFile } from '#server/readings/file/take-in-file';
import { facility } from './build-facility';
import { sensor, system } from './build-system';
import { keep } from './stored';

const FOLDER = new URL('../reference/loggers', import.meta.url).pathname;
const KEY = 'harbour';

/** A file as a form sends it. */
export interface GivenFile {
  name: string;
  bytes: Uint8Array<ArrayBuffer>;
}

/** An excerpt of a published file. */
export function excerpt(name: string): GivenFile {
  return { name, bytes: new Uint8Array(readFileSync(join(FOLDER, name))) };
}

/** A file of a text. */
export function fileOf(text: string, name = 'log.csv'): GivenFile {
  return { name, bytes: new TextEncoder().encode(text) };
}

/** Keeps the site `harbour` with a system that has these sensors, each by its key. @returns key of the system */
export async function siteWithSensors(sensors: Readonly<Record<string, SensorQuantity>>): Promise<string> {
  const base = system();
  const more = Object.entries(sensors).map(([key, quantity]) =>
    sensor({ key, name: key, quantity, tank: 'display', accuracy: undefined }),
  );
  await keep(facility({ systems: [{ ...base, sensors: [...base.sensors, ...more] }] }));
  return base.key;
}

/** Looks at a file, saying what is given. */
export async function look(file: GivenFile, given: { draft?: LayoutDraft; layout?: string } = {}): Promise<FileLook> {
  const seen = await lookAtFile(LOCAL_PERSON, { site: KEY, file, ...given });
  if (!seen.ok) throw new Error(JSON.stringify(seen.reason));
  return seen.value;
}

/** What is said of some columns by their place: sensor as `SYSTEM/SENSOR`, unit, and what 0 means. */
export type SaidColumns = Readonly<Record<number, readonly [string, string, ('real' | 'missing' | 'below')?]>>;

/** The draft of a look with some columns said, and no other taken. */
export function saying(seen: FileLook, columns: SaidColumns, more: Partial<LayoutDraft> = {}): LayoutDraft {
  return {
    ...seen.draft,
    columns: seen.draft.columns.map((column) => {
      const [sensorName, unit, zero = 'real'] = columns[column.place] ?? [null, null];
      return { ...column, sensor: sensorName, unit, zero };
    }),
    ...more,
  };
}

/** Takes a file in by a draft. */
export async function takeIn(file: GivenFile, draft: LayoutDraft, name = 'a layout'): Promise<TakenIn> {
  const taken = await takeInFile(LOCAL_PERSON, { site: KEY, file, draft, name });
  if (!taken.ok) throw new Error(JSON.stringify(taken.reason));
  return taken.value;
}
