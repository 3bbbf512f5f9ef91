import type { ReadRecord } from '#core/readings/arrived';
import { ok, type Result, refused } from '#core/result';
import { z } from 'zod';
import { figureSaid } from './csv-record';
import { parseSenml } from './parse-senml';

/** How a message of a topic is read. */
export interface MessageForm {
  payload: 'number' | 'field' | 'senml';
  /** Path of the value in a JSON object, its steps parted by dots, and of its time; for `field` alone. */
  field: string | null;
  timeField: string | null;
  /** As sources call it; null: the sensor's own. */
  unit: string | null;
}

const LONGEST_NAME = 200;
/** s since 1970 from which a number can only be ms: 1e11 s are the year 5138. */
const MS_FROM = 1e11;
const instantText = z.iso.datetime({ offset: true });

/**
 * What a message says.
 *
 * @param name    what the sensor is called by its topic
 * @param text    the payload
 * @param nowMs   when it came, ms since 1970; NaN where nobody can say, so that what has no time of its own has none
 * @returns       readings, each understood or what is wrong with it; or why nothing of it can be understood
 */
export function parseMessage(
  { payload, field, timeField, unit }: MessageForm,
  name: string,
  text: string,
  nowMs: number,
): Result<ReadRecord[], string> {
  if (payload === 'senml') {
    const pack = parseSenml(text, nowMs);
    return pack.ok ? pack : refused(`${pack.reason.field} ${pack.reason.why}`.trim());
  }
  if (name.length > LONGEST_NAME || /[\p{Cc}\p{Cs}]/u.test(name))
    return ok([refused({ field: 'topic', why: `must be a text of at most ${LONGEST_NAME} characters` })]);
  const value = payload === 'number' ? figureSaid(text.trim()) : fieldOf(text, field ?? '');
  if (value === undefined) return refused('is no JSON object');
  const figure = typeof value === 'string' ? figureSaid(value.trim()) : value;
  if (typeof figure !== 'boolean' && !(typeof figure === 'number' && Number.isFinite(figure)))
    return ok([refused({ field: field ?? 'payload', why: 'is no number', name })]);
  const atMs = timeField === null ? nowMs : instantOf(fieldOf(text, timeField));
  if (atMs === null) return ok([refused({ field: timeField ?? '', why: 'is no instant with its zone', name })]);
  return ok([ok({ name, atMs, value: figure, ...(unit === null ? {} : { unit }) })]);
}

/** What stands at a path of a JSON object; undefined when it is none, null when nothing stands there. */
function fieldOf(text: string, path: string): unknown {
  let at = jsonOf(text);
  if (typeof at !== 'object' || at === null) return undefined;
  for (const step of path.split('.')) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, step)) return null;
    at = (at as Record<string, unknown>)[step];
  }
  return at ?? null;
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}

/** Seconds or ms since 1970, or RFC 3339. @returns ms; null for anything else */
function instantOf(said: unknown): number | null {
  const value = typeof said === 'string' ? (figureSaid(said.trim()) ?? said) : said;
  if (typeof value === 'number') {
    const ms = Math.round(value < MS_FROM ? value * 1000 : value);
    return value > 0 && ms <= 8.64e15 ? ms : null;
  }
  const read = instantText.safeParse(typeof value === 'string' ? value.toUpperCase() : value);
  return read.success ? Date.parse(read.data) : null;
}
