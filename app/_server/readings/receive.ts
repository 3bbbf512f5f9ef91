import 'server-only';
import { RateLimiterMemory, RateLimiterRes } from 'rate-limiter-flexible';
import type { BodyFault, ReadRecord } from '#core/readings/arrived';
import type { Result } from '#core/result';
import { findSource, noteUse, type SendingSource } from '#data/readings/sources';
import { parseSenml } from '#shape/readings/parse-senml';
import type { ReadingsAnswer, ReadingsRefusal } from '#shape/readings/answer';
import { now } from '../clock';
import { logError } from '../log';
import { hasRoom } from '../machine/has-room';
import { guard } from '../web/guard';
import { FOR_DEVICES } from '../web/own-request';
import { parseCsv } from './parse-csv';
import { MOST_BYTES, readBody, type Unread } from './read-body';
import { type RecordAnswer, takeIn } from './take-in';
import { Turns } from './turns';

/** Requests a source may make in a minute, in each web process. Common practice, no source. */
const REQUESTS_A_MINUTE = 1200;
/**
 * Bodies that are read at once, for each may be of 4 MB; of one source fewer, so that one whose line is bad keeps no other out.
 * The others wait unread: a burst of small bodies is over in a moment.
 */
const turns = new Turns({ all: 8, each: 2, waiting: 64, waitMs: 1500 });
const BUSY_RETRY_S = 1;
const FULL_RETRY_S = 60;

const limiter = new RateLimiterMemory({ points: REQUESTS_A_MINUTE, duration: 60 });

/** What a body may be: how it is read, and what its fields are called. */
interface Format {
  read: (body: string, nowMs: number) => Result<ReadRecord[], BodyFault>;
  fields: Parameters<typeof takeIn>[2];
}

const UNREAD: Readonly<Record<Unread, { status: number; said: string }>> = {
  'too-large': { status: 413, said: `A body has at most ${MOST_BYTES / 1e6} MB: send it in parts.` },
  'no-text': { status: 400, said: 'The body is not UTF-8.' },
  'broken-off': { status: 400, said: 'The body was broken off.' },
  'too-slow': { status: 408, said: 'The body did not come in time: send it in parts.' },
};

const SENML: Format = { read: parseSenml, fields: { name: 'n', time: 't', value: 'v', unit: 'u' } };
const CSV: Format = { read: parseCsv, fields: { name: 'name', time: 'time', value: 'value', unit: 'unit' } };
const FORMATS: Readonly<Record<string, Format>> = {
  'application/senml+json': SENML,
  'application/json': SENML,
  'text/csv': CSV,
};

/**
 * Receives readings from a source, which shows its token and is nobody who is signed in.
 *
 * @param request   SenML in JSON (RFC 8428) or CSV; `?correct=1` when its values supersede what is there
 * @returns         200 and what became of each record when all were dealt with; else why nothing was stored
 */
export async function receiveReadings(request: Request): Promise<Response> {
  const guarded = guard(request, FOR_DEVICES);
  if (guarded.answer) return guarded.answer;
  const answer = await answerTo(request);
  for (const [name, value] of Object.entries(guarded.headers)) answer.headers.set(name, value);
  // To press a few kilobytes together costs more than to send them.
  answer.headers.set('cache-control', 'no-store, no-transform');
  return answer;
}

async function answerTo(request: Request): Promise<Response> {
  const source = await findSource(bearerOf(request.headers));
  if (!source) return refusal(401, 'The token is none of a source that may send readings here.');
  const waitS = await pauseFor(source.id);
  if (waitS > 0) return refusal(429, 'Too many requests in a minute: send more readings in each.', waitS);
  // What was compressed is not unpacked: a small body could become one without end.
  if ((request.headers.get('content-encoding') ?? 'identity') !== 'identity')
    return refusal(415, 'Send it as it is: what is compressed is not unpacked here.');
  const format = formatOf(request.headers);
  if (!format) return refusal(415, 'Send application/senml+json, application/json or text/csv in UTF-8.');
  if (!(await hasRoom())) return refusal(503, 'There is no room on the disk: nothing was stored.', FULL_RETRY_S);
  if (!(await turns.take(source.id))) return refusal(503, 'Too many send at once: nothing was stored.', BUSY_RETRY_S);
  try {
    return await receive(request, source, format);
  } catch (error) {
    logError('readings could not be stored', error);
    return refusal(503, 'The database does not answer: send it again.', BUSY_RETRY_S);
  } finally {
    turns.end(source.id);
  }
}

async function receive(request: Request, source: SendingSource, { read, fields }: Format): Promise<Response> {
  const body = await readBody(request);
  if (typeof body === 'string') return refusal(UNREAD[body].status, UNREAD[body].said);
  const receivedAt = now();
  const records = read(body.text, receivedAt.getTime());
  if (!records.ok) {
    const { kind, field, why } = records.reason;
    return refusal(kind === 'too-large' ? 413 : 400, `${field || 'The body'} ${why}.`, undefined, field);
  }
  const { siteId, id, signs } = source;
  const coming = { siteId, cameBy: id, receivedAt, correct: isCorrection(request), signs };
  const answers = await takeIn(records.value, coming, fields);
  await noteUse(source, receivedAt);
  return Response.json(counted(answers));
}

function counted(records: RecordAnswer[]): ReadingsAnswer {
  const counts = { stored: 0, repeat: 0, conflict: 0, corrected: 0, refused: 0 };
  let late = 0;
  for (const answer of records) {
    counts[answer.result] += 1;
    if ('late' in answer) late += 1;
  }
  return { ...counts, late, records };
}

function bearerOf(headers: Headers): string {
  return /^Bearer +(\S+)$/i.exec(headers.get('authorization') ?? '')?.[1] ?? '';
}

function isCorrection(request: Request): boolean {
  return new URL(request.url).searchParams.get('correct') === '1';
}

function formatOf(headers: Headers): Format | undefined {
  const [type = '', ...parameters] = (headers.get('content-type') ?? '')
    .toLowerCase()
    .split(';')
    .map((part) => part.trim());
  const charset = parameters.find((parameter) => parameter.startsWith('charset='));
  if (charset !== undefined && !/^charset="?utf-8"?$/.test(charset)) return undefined;
  return Object.hasOwn(FORMATS, type) ? FORMATS[type] : undefined;
}

/** s a source has to wait; 0 when it may go on. */
async function pauseFor(sourceId: string): Promise<number> {
  try {
    await limiter.consume(sourceId);
    return 0;
  } catch (refused) {
    if (!(refused instanceof RateLimiterRes)) throw refused;
    return Math.max(1, Math.ceil(refused.msBeforeNext / 1000));
  }
}

function refusal(status: number, said: string, retryS?: number, field?: string): Response {
  const headers = new Headers(retryS === undefined ? {} : { 'retry-after': String(retryS) });
  if (status === 401) headers.set('www-authenticate', 'Bearer');
  const body: ReadingsRefusal = { said, ...(field ? { field } : {}) };
  return Response.json(body, { status, headers });
}
