import 'server-only';

/** Bytes of a body that are read. */
export const MOST_BYTES = 4_000_000;
/** ms in which a body has to be there: 4 MB over a line of 2 Mbit/s take 16 s. Common practice, no source. */
const READ_WITHIN_MS = 20_000;

/** Why a body was not read. */
export type Unread = 'too-large' | 'no-text' | 'broken-off' | 'too-slow';

/**
 * The text of a request's body, of which no more is ever held than may come, and for no longer than it may take: a line that
 * died half-way looks like one that is slow.
 *
 * @param withinMs   ms in which it has to be there
 * @returns          the text; `too-large` when there is more than 4 MB, whatever the request says of its length; `no-text` when
 *                   it is not UTF-8; `broken-off` when the sender went away; `too-slow` when it was not there in time
 */
export async function readBody(
  request: Pick<Request, 'headers' | 'body'>,
  withinMs: number = READ_WITHIN_MS,
): Promise<{ text: string } | Unread> {
  const read = await readBytes(request, withinMs);
  return typeof read === 'string' ? read : textOf(read.bytes);
}

/**
 * The bytes of a request's body, as `readBody` reads its text.
 *
 * @param withinMs   ms in which it has to be there
 */
export async function readBytes(
  request: Pick<Request, 'headers' | 'body'>,
  withinMs: number = READ_WITHIN_MS,
): Promise<{ bytes: Uint8Array } | Exclude<Unread, 'no-text'>> {
  if (Number(request.headers.get('content-length') ?? 0) > MOST_BYTES) return 'too-large';
  const reader = request.body?.getReader();
  if (!reader) return { bytes: new Uint8Array() };
  let isLate = false;
  const timer = setTimeout(() => {
    isLate = true;
    // What was being waited for ends as though the body did.
    void reader.cancel().catch(() => undefined);
  }, withinMs);
  const read = await piecesFrom(reader);
  clearTimeout(timer);
  if (isLate) return 'too-slow';
  return typeof read === 'string' ? read : { bytes: Buffer.concat(read) };
}

async function piecesFrom(
  reader: ReadableStreamDefaultReader<Uint8Array>,
): Promise<Uint8Array[] | 'too-large' | 'broken-off'> {
  const pieces: Uint8Array[] = [];
  let bytes = 0;
  try {
    for (let piece = await reader.read(); !piece.done; piece = await reader.read()) {
      bytes += piece.value.byteLength;
      if (bytes > MOST_BYTES) {
        await reader.cancel();
        return 'too-large';
      }
      pieces.push(piece.value);
    }
  } catch {
    return 'broken-off';
  }
  return pieces;
}

function textOf(bytes: Uint8Array): { text: string } | 'no-text' {
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch {
    return 'no-text';
  }
}
