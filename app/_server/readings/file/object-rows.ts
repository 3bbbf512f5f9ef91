import 'server-only';
import type { FileRow } from '#core/readings/file/layout';
import { ok, type Result, refused } from '#core/result';

/** Fields of one object. */
const MOST_FIELDS = 200;
/** Objects and lists in a file, counted before they are made of its letters: made they are many times as large. */
const MOST_OPENED = 1_000_000;
/** What PostgreSQL takes into no text: nothing, and half of a letter. */
const UNKEEPABLE = /[\0\ud800-\udfff]/gu;
/** How deep the list of objects is looked for. */
const DEEPEST = 4;

/**
 * Rows of a JSON file: of the longest list of objects in it, or of one object a line. The first row holds their fields, as a
 * header would; what a field holds that is no text and no number is left empty.
 *
 * @returns   rows numbered as the objects are, from 1; or what is wrong
 */
export function objectRows(text: string): Result<FileRow[], string> {
  if (opened(text, '{') + opened(text, '[') > MOST_OPENED)
    return refused(`It holds more than ${MOST_OPENED} objects and lists: cut it in parts.`);
  const list = longestList(text);
  if (typeof list === 'string') return refused(list);
  const fields = [...new Set(list.flatMap((one) => Object.keys(one)))];
  if (fields.length > MOST_FIELDS) return refused(`It has more than ${MOST_FIELDS} fields.`);
  if (fields.some((field) => field.search(UNKEEPABLE) >= 0))
    return refused('The name of a field holds letters that cannot be kept.');
  const rows = list.map((one, i) => ({ line: i + 1, cells: fields.map((field) => cellOf(one[field])) }));
  return ok([{ line: 0, cells: fields }, ...rows]);
}

function opened(text: string, mark: '{' | '['): number {
  let count = 0;
  for (let at = text.indexOf(mark); at >= 0; at = text.indexOf(mark, at + 1)) count += 1;
  return count;
}

type Fields = Record<string, unknown>;

function longestList(text: string): Fields[] | string {
  const whole = parsed(text);
  if (whole !== undefined) return listIn(whole, 0) ?? 'It holds no list of objects, each with a time and values.';
  const lines = text.split('\n').filter((line) => line.trim() !== '');
  const wrong = lines.findIndex((line) => !isFields(parsed(line)));
  // Two lines that are objects are a file of them; else it was meant to be one value, and is broken.
  if (wrong >= 0)
    return wrong < 2 ? 'It is no JSON that can be read.' : `Line ${wrong + 1} is no JSON that can be read.`;
  return lines.map(parsed).filter(isFields);
}

function listIn(value: unknown, depth: number): Fields[] | null {
  if (Array.isArray(value)) {
    const objects = value.filter(isFields);
    return objects.length > 0 && objects.length === value.length ? objects : null;
  }
  if (!isFields(value) || depth >= DEEPEST) return null;
  const lists = Object.values(value).map((inner) => listIn(inner, depth + 1));
  return lists.reduce((a, b) => ((b?.length ?? 0) > (a?.length ?? 0) ? b : a), null);
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function isFields(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function cellOf(value: unknown): string {
  if (typeof value === 'string') return value.replace(UNKEEPABLE, '\ufffd').trim();
  return typeof value === 'number' || typeof value === 'boolean' ? String(value) : '';
}
