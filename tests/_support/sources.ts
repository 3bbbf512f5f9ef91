import { makeSource } from '#data/readings/sources';
import { inTransaction } from '#data/transaction';
import { now } from '#server/clock';
import { receiveReadings } from '#server/readings/receive';

/** Makes a source of a site. @returns its id and its token */
export async function aSource(siteId: string, name = 'Gateway by the pumps'): Promise<{ id: string; token: string }> {
  return await inTransaction((tx) => makeSource(tx, siteId, { name, gatewayId: null }, 'local', now()));
}

/** Sends a body as a device would; SenML when nothing else is said. */
export async function post(
  token: string,
  body: string | ReadableStream<Uint8Array> | object,
  {
    type = 'application/senml+json',
    query = '',
    headers = {},
  }: { type?: string; query?: string; headers?: Record<string, string> } = {},
): Promise<Response> {
  const isWhole = typeof body === 'object' && !(body instanceof ReadableStream);
  return await receiveReadings(
    new Request(`http://localhost:3200/api/readings${query}`, {
      method: 'POST',
      headers: { host: 'localhost:3200', authorization: `Bearer ${token}`, 'content-type': type, ...headers },
      body: isWhole ? JSON.stringify(body) : body,
      ...(body instanceof ReadableStream ? { duplex: 'half' } : {}),
    } as RequestInit),
  );
}
