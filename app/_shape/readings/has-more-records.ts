const QUOTE = 34;
const BACKSLASH = 92;
const OPEN_LIST = 91;
const CLOSE_LIST = 93;
const OPEN_RECORD = 123;
const CLOSE_RECORD = 125;
/** How deep the records of a pack stand. */
const RECORD_DEPTH = 2;
/** Characters of the shortest one with the comma behind it. */
const SHORTEST = 3;

/**
 * Whether a pack holds more records than so many: told of its text, for parsed each of a million empty ones takes fifty times the
 * memory of its three characters.
 *
 * @param text   that is meant to be JSON; of one that is not something is said all the same
 */
export function hasMoreRecords(text: string, most: number): boolean {
  if (text.length < most * SHORTEST) return false;
  let depth = 0;
  let records = 0;
  let isText = false;
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (isText) {
      if (code === BACKSLASH) at += 1;
      else if (code === QUOTE) isText = false;
    } else if (code === QUOTE) isText = true;
    else if (code === OPEN_LIST || code === OPEN_RECORD) {
      depth += 1;
      if (depth === RECORD_DEPTH) records += 1;
      if (records > most) return true;
    } else if (code === CLOSE_LIST || code === CLOSE_RECORD) depth -= 1;
  }
  return false;
}
