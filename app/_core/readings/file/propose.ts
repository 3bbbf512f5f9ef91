import type { SensorQuantity } from '../../facility/system';
import type { ColumnFacts, FileFacts } from './facts';
import type { Structure } from './find-structure';
import { flagColumnOf, quantityNamed } from './guess-columns';
import type { ColumnDraft, Encoding, FlagMeaning, LayoutDraft, TimeLayout } from './layout';
import { unitOf } from './unit-said';
import { zoneSaid } from './zone-said';

/** A sensor that a column can be. */
export interface SensorChoice {
  id: string;
  quantity: SensorQuantity;
}

const NO_READING = /^(mm|n\/?a|nan|null|none|nil|missing|no data|-+|\*+|-99(9*)(\.9*|\.0*)?|-?9999(\.0*)?)$/i;
const FLAGS: readonly (readonly [RegExp, FlagMeaning])[] = [
  [/\b(sbl|bdl|lod|loq|mdl)\b|below/i, 'below'],
  [/^(bad|fail(ed)?|reject(ed)?|b|r|error)$/i, 'bad'],
  [/^(0|1|ok|good|g|pass|valid|<0>|0(,0)+)$/i, 'good'],
];
/** min either side of midnight in which a logger that runs by night has rows too. */
const NIGHT_MIN = 360;
/** Fewer rows at 00:00 than this say nothing. */
const FEW = 3;

/**
 * What is likely of a layout, and null for what the file itself does not decide: that is asked.
 *
 * @param facts     of the whole file
 * @param sensors   that a column can be
 */
export function proposeLayout(
  structure: Structure,
  facts: FileFacts,
  encoding: Encoding,
  sensors: readonly SensorChoice[],
): LayoutDraft {
  const { delimiter, head, units, preamble } = structure;
  const time = orderedTime(structure.time, facts);
  const columns = columnsOf(structure, facts, sensors);
  return {
    encoding,
    delimiter,
    head,
    hasUnitsRow: units.length > 0,
    decimal: facts.commas > facts.points ? ',' : '.',
    time,
    zone: needsNoZone(time, facts) ? 'UTC' : zoneSaid([...timeNames(time, head), ...preamble]),
    midnight: midnightOf(time, facts),
    missing: missingWords(facts),
    columns,
    flags: flagsOf(facts, columns),
    goodFrom: null,
  };
}

/** Whether the zone makes no difference: every time says its own, or is counted from 1970. */
export function needsNoZone(time: TimeLayout, facts: FileFacts): boolean {
  return time.as === 'epoch' || (facts.rows > 0 && facts.zoned === facts.rows);
}

/** Whether flags of a column are numbers on a scale rather than words. */
export function isScale({ filled, numbers, words, isCut }: ColumnFacts): boolean {
  return filled > 0 && numbers === filled && (isCut || [...words.keys()].some((word) => /\d[.,]\d/.test(word)));
}

function orderedTime(time: TimeLayout, facts: FileFacts): TimeLayout {
  if (time.as !== 'text') return time;
  const [order = null, ...others] = facts.orders;
  return { ...time, order: others.length > 0 ? null : order };
}

function timeNames(time: TimeLayout, head: readonly string[]): string[] {
  const places = time.as === 'text' ? [time.date, time.clock ?? time.date] : time.as === 'parts' ? time.columns : [];
  return places.map((place) => head[place] ?? '');
}

/** Columns that may be taken: those that hold readings, and neither times nor flags. */
function columnsOf(
  { head, units, time }: Structure,
  facts: FileFacts,
  sensors: readonly SensorChoice[],
): ColumnDraft[] {
  const used = new Set(placesOf(time));
  const flags = facts.columns.map((_, place) => flagColumnOf(head, place));
  const values = facts.columns.flatMap((column, place) =>
    isOfValues(column) && !used.has(place) && !flags.includes(place) ? [place] : [],
  );
  const named = values.map((place) => quantityNamed(head[place] ?? ''));
  return values.map((place, i) => {
    const quantity = named[i] ?? null;
    const fitting = sensors.filter((sensor) => sensor.quantity === quantity);
    // Two columns that can be one sensor, or two sensors that a column can be: only a person knows.
    const isPlain = fitting.length === 1 && named.filter((other) => other === quantity).length === 1;
    const name = `${head[place] ?? ''} (${units[place] ?? ''})`;
    const unit = quantity === null ? null : (unitOf(quantity, name) ?? unitOf(quantity, asElement(name)));
    const zero = (facts.columns[place]?.zeros ?? 0) > 0 ? null : 'real';
    return { place, sensor: isPlain ? (fitting[0]?.id ?? null) : null, unit, zero, flag: flags[place] ?? null };
  });
}

/** A name that says after a dash what the substance is reckoned as: "NH4-N [mg/l]" is mg/L as N. */
function asElement(name: string): string {
  const element = /-([NP])\b/.exec(name)?.[1];
  const unit = /(mg|ug|µg)\/l/i.exec(name)?.[0];
  return element && unit ? `(${unit} ${element})` : '';
}

/** Columns in which the time stands. */
export function placesOf(time: TimeLayout): number[] {
  if (time.as === 'epoch') return [time.column];
  return time.as === 'parts' ? time.columns : [time.date, ...(time.clock === undefined ? [] : [time.clock])];
}

function midnightOf(time: TimeLayout, facts: FileFacts): LayoutDraft['midnight'] {
  if (time.as === 'epoch') return 'real';
  if (facts.clockless === facts.rows) return 'unknown';
  const midnights = facts.clocks.get(0) ?? 0;
  const isNight = (minute: number) => minute !== 0 && (minute <= NIGHT_MIN || minute >= 1440 - NIGHT_MIN);
  const nightly = [...facts.clocks].reduce((sum, [minute, count]) => sum + (isNight(minute) ? count : 0), 0);
  // Somebody who samples by day writes 00:00 when they write no time; a logger writes the hours about it too.
  return midnights >= FEW && nightly < midnights ? null : 'real';
}

/** Words of any column: one that has none of them today may have it in the next file. */
function missingWords({ columns }: FileFacts): string[] {
  const words = columns.flatMap(({ words: seen }) => [...seen.keys()]);
  return [...new Set(words.filter((word) => NO_READING.test(word)))];
}

/** Whether a column may hold readings: numbers, or at least the words that stand where one is missing. */
function isOfValues({ numbers, words }: ColumnFacts): boolean {
  return numbers > 0 || (words.size > 0 && [...words.keys()].every((word) => NO_READING.test(word)));
}

function flagsOf(facts: FileFacts, columns: readonly ColumnDraft[]): Record<string, FlagMeaning> {
  const places = [...new Set(columns.flatMap(({ flag }) => (flag === null ? [] : [flag])))];
  const words = places.map((place) => facts.columns[place]).filter((column) => column && !isScale(column));
  const seen = new Set(words.flatMap((column) => [...(column?.words.keys() ?? [])]));
  return Object.fromEntries([...seen].map((word) => [word, meaningOf(word)] as const));
}

function meaningOf(flag: string): FlagMeaning {
  return FLAGS.find(([words]) => words.test(flag))?.[1] ?? 'suspect';
}
