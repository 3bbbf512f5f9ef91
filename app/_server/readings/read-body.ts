import 'server-only';

/** Bytes of a body that are read. */
export const MOST_BYTES = 4_000_000;

/**
 * The text of a request's body, of which no more is ever held than may come.
 *
 * @returns   the text; `too-large` when there is more than 4 MB, whatever the request says of its length; `no-text` when it
 *            is not UTF-8; `broken-off` when the sender went away
 */
export async function readBody(request: Request): Promise<{ text: string } | 'too-large' | 'no-text' | 'broken-off'> {
  if (Number(request.headers.get('content-length') ?? 0) > MOST_BYTES) return 'too-large';
  const reader = request.body?.getReader();
  if (!reader) return { text: '' };
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
  return textOf(pieces);
}

function textOf(pieces: readonly Uint8Array[]): { text: string } | 'no-text' {
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(pieces)) };
  } catch {
    return 'no-text';
  }
}
