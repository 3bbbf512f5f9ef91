import { refusalWords } from '#server/gate/refusal-words';
import type { Entry } from './entries';
import type { Given } from './line';

/** What came of asking: `done`, or why not, and everything that was told. */
export interface Told {
  outcome: string;
  text: string;
}

/** Calls an entry as Next would. The request's headers are those that the test has set. */
export async function askEntry(entry: Entry, { params = {}, search = {}, form = {}, body }: Given): Promise<Told> {
  switch (entry.kind) {
    case 'page':
      return await askPage(entry, params, search);
    case 'handler':
      return await askHandler(entry, params, search, body);
    case 'action':
      return await askAction(entry, form);
  }
}

/** Headers of the request that is under way. */
export const underWay = { headers: new Headers() };

async function askPage(
  { call, metadata }: Entry,
  params: Required<Given>['params'],
  search: Record<string, string>,
): Promise<Told> {
  const given = { params: Promise.resolve(params), searchParams: Promise.resolve(search) };
  const head = metadata ? await told(async () => await metadata(given as never)) : { outcome: 'done', text: '' };
  const body = await told(async () => await call(given as never));
  return { outcome: body.outcome, text: `${head.text}\n${body.text}` };
}

async function told(work: () => Promise<unknown>): Promise<Told> {
  try {
    const text = plain(await unfold(await work()));
    // A page that says itself what it refuses is as good as one that leads elsewhere.
    const why = (['not-signed-in', 'not-allowed'] as const).find((one) => text.includes(refusalWords({ why: one })));
    return { outcome: why ?? 'done', text };
  } catch (error) {
    return { outcome: outcomeOf(error), text: String(error) };
  }
}

function outcomeOf(error: unknown): string {
  const digest = error instanceof Error && 'digest' in error ? String(error.digest) : '';
  if (digest === 'NEXT_HTTP_ERROR_FALLBACK;404') return 'not-found';
  if (digest.startsWith('NEXT_REDIRECT') && digest.includes('/sign-in')) return 'not-signed-in';
  const said = error instanceof Error ? error.message : '';
  if (said === refusalWords({ why: 'not-allowed' })) return 'not-allowed';
  if (said === refusalWords({ why: 'not-signed-in' })) return 'not-signed-in';
  throw error;
}

const BY_STATUS: Record<number, string> = {
  401: 'not-signed-in',
  403: 'not-allowed',
  404: 'not-found',
  409: 'conflict',
  422: 'invalid',
};

async function askHandler(
  { call, name }: Entry,
  params: Required<Given>['params'],
  search: Record<string, string>,
  body: object | undefined,
): Promise<Told> {
  const method = name.split(' ').at(-1) ?? 'GET';
  const url = `http://localhost:3200/?${new URLSearchParams(search)}`;
  const sent = body === undefined ? {} : { body: JSON.stringify(body) };
  const request = new Request(url, { method, headers: underWay.headers, ...sent });
  const response = (await call(...([request, { params: Promise.resolve(params) }] as never[]))) as Response;
  const outcome = response.ok ? 'done' : (BY_STATUS[response.status] ?? String(response.status));
  return { outcome, text: await textOf(response) };
}

/** A stream never ends by itself: what it says at first is what it tells, and then the browser goes. */
async function textOf(response: Response): Promise<string> {
  const isStream = response.headers.get('content-type')?.startsWith('text/event-stream') ?? false;
  const reader = isStream ? response.body?.getReader() : undefined;
  if (!reader) return await response.text();
  const { value } = await reader.read();
  await reader.cancel();
  return new TextDecoder().decode(value);
}

async function askAction({ call }: Entry, fields: NonNullable<Given['form']>): Promise<Told> {
  const form = new FormData();
  for (const [name, value] of Object.entries(fields)) form.set(name, value);
  // An action made by `act` is given what it answered before; another is given the form alone.
  let answer: unknown;
  try {
    answer = await call(...((call.length > 1 ? [null, form] : [form]) as never[]));
  } catch (error) {
    return { outcome: outcomeOf(error), text: '' };
  }
  if (answer === undefined) return { outcome: 'done', text: '' };
  const { ok, reason } = answer as { ok: boolean; reason?: { why: string } };
  const text = JSON.stringify(answer);
  return { outcome: ok ? 'done' : (reason?.why ?? 'unknown'), text };
}

/** Carries out the parts of a page that ask for something themselves: what is async in it. */
async function unfold(node: unknown): Promise<unknown> {
  if (Array.isArray(node)) return await Promise.all(node.map(unfold));
  if (typeof node !== 'object' || node === null || !('props' in node)) return node;
  const { type, props } = node as { type?: unknown; props: Record<string, unknown> };
  if (typeof type === 'function' && type.constructor.name === 'AsyncFunction') return await unfold(await type(props));
  return { props: { ...props, children: await unfold(props.children) } };
}

/** All that a page hands to what it is made of, as a text. What begins with an underscore is React's own. */
function plain(element: unknown): string {
  const seen = new Set<unknown>();
  return (
    JSON.stringify(element, (name, value: unknown) => {
      if (name.startsWith('_')) return undefined;
      if (value instanceof Map || value instanceof Set) return [...value];
      if (typeof value !== 'object' || value === null) return value;
      if (seen.has(value)) return undefined;
      seen.add(value);
      return value;
    }) ?? ''
  );
}
