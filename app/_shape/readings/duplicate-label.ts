const QUOTE = 34;
const COMMA = 44;
const BACKSLASH = 92;
const OPEN_LIST = 91;
const CLOSE_LIST = 93;
const OPEN_RECORD = 123;
const CLOSE_RECORD = 125;
/** How deep the labels of a record of a pack stand. */
const RECORD_DEPTH = 2;

/**
 * The first label that a record of a pack has twice. A parser of JSON keeps the last of them and says nothing, so that of two
 * values one would vanish.
 *
 * @param text   JSON that is well-formed
 * @returns      number of the record from 0, and the label; null when there is none
 */
export function duplicateLabel(text: string): { record: number; label: string } | null {
  let depth = 0;
  let record = -1;
  let isLabel = false;
  let seen = new Set<string>();
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === QUOTE) {
      const end = endOfString(text, at);
      if (isLabel && depth === RECORD_DEPTH) {
        const label = labelOf(text.slice(at, end + 1));
        if (seen.has(label)) return { record, label };
        seen.add(label);
      }
      isLabel = false;
      at = end;
    } else if (code === OPEN_LIST || code === OPEN_RECORD) {
      depth += 1;
      isLabel = code === OPEN_RECORD;
      if (depth !== RECORD_DEPTH) continue;
      record += 1;
      seen = new Set();
    } else if (code === CLOSE_LIST || code === CLOSE_RECORD) depth -= 1;
    else if (code === COMMA) isLabel = depth === RECORD_DEPTH;
  }
  return null;
}

function endOfString(text: string, begin: number): number {
  for (let at = begin + 1; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === BACKSLASH) at += 1;
    else if (code === QUOTE) return at;
  }
  return text.length;
}

function labelOf(quoted: string): string {
  return quoted.includes('\\') ? String(JSON.parse(quoted)) : quoted.slice(1, -1);
}
