import { KIND_WORDS } from '../words/kinds';
import { byWords, gravestFirst } from './system-order';
import { type ListedSystem, type RowView, systemRow } from './system-row';

/** Systems up to which all are shown at once. */
const FEW = 100;
/** How many of more are shown first, the worst: a thousand take a page a second to draw, and nobody reads them from the top. */
const FIRST = 30;

/** What of a table of systems goes to the browser. */
export interface ShownFirst {
  /** Its rows, as one text of JSON: given as values, each field would be walked through and escaped four times on its way. */
  packed: string;
  /** How many there are, sent or not. */
  all: number;
  /** What they can be narrowed down by, in order. */
  sites: string[];
  kinds: string[];
}

/**
 * All rows where a person has asked something of the table (an order, a filter, the others), and where they are few. Else the
 * worst: a thousand rows are a megabyte, each minute, on a telephone as well. What is not sent is not put into words.
 *
 * @param isAsked   whether the address asks anything of the table
 */
export function shownFirst(systems: readonly ListedSystem[], view: RowView, isAsked: boolean): ShownFirst {
  const sent = isAsked ? systems : gravestFirst(systems).slice(0, atOnce(systems.length));
  return {
    packed: JSON.stringify(sent.map((system) => systemRow(system, view))),
    all: systems.length,
    sites: distinct(systems.map(({ site }) => site.name)),
    kinds: distinct(systems.map(({ kind }) => KIND_WORDS[kind])),
  };
}

/** How many of so many are shown before somebody asks for the others. */
export function atOnce(count: number): number {
  return count > FEW ? FIRST : FEW;
}

function distinct(names: string[]): string[] {
  return [...new Set(names)].sort(byWords);
}
