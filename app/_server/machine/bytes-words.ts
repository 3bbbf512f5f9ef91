import 'server-only';

const GB = 1e9;
const MB = 1e6;

/** Bytes as people say them: `12.3 GB`, `450 MB`. */
export function bytesWords(bytes: number): string {
  return bytes >= GB ? `${(bytes / GB).toFixed(1)} GB` : `${Math.floor(bytes / MB)} MB`;
}
