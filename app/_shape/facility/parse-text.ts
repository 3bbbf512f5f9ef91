import type { Path } from '#core/facility/path';
import { ok, type Result, refused } from '#core/result';
import { type Document, isAlias, isMap, isScalar, isSeq, LineCounter, type Node, type YAMLError } from 'yaml';
import type { FileError } from './file-error';
import { DEEPEST, yamlDocument } from './yaml-document';

/** How a file is written. JSON is held to the letter; YAML is version 1.2 with its core schema. */
export type FileFormat = 'json' | 'yaml';

/** What stands in a file, with the place of every part of it. */
export interface ParsedText {
  data: unknown;
  /** Where a part stands. A part that is missing stands where the part it is missing from begins. */
  placeOf(path: Path): { line: number; column: number };
}

/** Longest file that is read, in characters: a site of about 150 well described systems. */
export const LONGEST = 3_000_000;
/** How often aliases may multiply what stands in a file. */
const MOST_ALIASES = 100;

/**
 * JSON or YAML text as data. YAML's traps are shut: no custom tags, no key twice, aliases only within bounds, and an
 * unquoted `07:30`, `no` or date stays text.
 *
 * @param text   the whole file
 * @param format how it is written; left out, YAML is taken, of which JSON is a part
 * @returns the data with its places, or every fault of writing
 */
export function parseText(text: string, format?: FileFormat): Result<ParsedText, FileError[]> {
  if (text.length > LONGEST) return fault(`is longer than ${LONGEST} characters`);
  const bare = text.startsWith('\uFEFF') ? text.slice(1) : text;
  if (bare.trim() === '') return fault('is empty');
  const lines = new LineCounter();
  const document = yamlDocument(bare, lines);
  if (typeof document === 'string') return fault(document);
  const faults = [...document.errors, ...document.warnings];
  if (faults.length > 0) return refused(faults.map((one) => wordFault(one, lines)));
  if (format === 'json') {
    const broken = brokenJson(bare);
    if (broken !== null) return fault('is not JSON from here on', lines.linePos(broken));
  }
  const held = dataOf(document);
  if (!held) return fault(`uses aliases that are missing or multiply beyond ${MOST_ALIASES}`);
  if (isDeeperThan(held.data, DEEPEST)) return fault('is nested too deeply');
  return ok({ data: held.data, placeOf: (path) => placeOf(path, document, lines) });
}

/** Where text that is YAML stops being JSON as well, counted in characters; null when it is JSON throughout. */
function brokenJson(text: string): number | null {
  try {
    JSON.parse(text);
    return null;
  } catch (error) {
    return Number(/position (\d+)/.exec(String(error))?.[1] ?? text.length - 1);
  }
}

/** The plain data of a document; null when its aliases lead nowhere or multiply beyond bounds. */
function dataOf(document: Document): { data: unknown } | null {
  try {
    return { data: document.toJS({ maxAliasCount: MOST_ALIASES }) };
  } catch (error) {
    if (error instanceof ReferenceError) return null;
    throw error;
  }
}

function fault(rest: string, { line, col } = { line: 1, col: 1 }): Result<never, FileError[]> {
  return refused([{ path: '', line, column: col, message: `the file ${rest}` }]);
}

function wordFault({ code, message, pos }: YAMLError, lines: LineCounter): FileError {
  const words: Partial<Record<typeof code, string>> = {
    TAB_AS_INDENT: 'a tab is used to indent; YAML takes spaces only',
    DUPLICATE_KEY: 'the same field stands twice in one place',
    MULTIPLE_DOCS: 'a second document begins here; a facility file holds one',
    TAG_RESOLVE_FAILED: `a tag is used, which a facility file may not have (${message})`,
  };
  const { line, col } = lines.linePos(pos[0]);
  return { path: '', line, column: col, message: words[code] ?? `cannot be read here: ${message}` };
}

function isDeeperThan(value: unknown, levels: number): boolean {
  if (typeof value !== 'object' || value === null) return false;
  return levels === 0 || Object.values(value).some((part) => isDeeperThan(part, levels - 1));
}

function placeOf(path: Path, document: Document, lines: LineCounter): { line: number; column: number } {
  let node: Node | null = document.contents;
  let offset = node?.range?.[0] ?? 0;
  for (const step of path) {
    const part: { key: Node | null; value: Node | null } | null = childOf(resolved(node, document), step);
    if (!part) break;
    offset = (part.key ?? part.value)?.range?.[0] ?? offset;
    node = part.value;
  }
  const { line, col } = lines.linePos(offset);
  return { line, column: col };
}

function resolved(node: Node | null, document: Document): Node | null {
  return isAlias(node) ? (node.resolve(document) ?? null) : node;
}

function childOf(node: Node | null, step: string | number): { key: Node | null; value: Node | null } | null {
  if (isSeq<Node>(node) && typeof step === 'number') return { key: null, value: node.items[step] ?? null };
  if (!isMap<Node, Node>(node)) return null;
  const pair = node.items.find(({ key }) => isScalar(key) && String(key.value) === step);
  return pair ? { key: pair.key, value: pair.value } : null;
}
