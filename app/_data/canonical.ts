import 'server-only';

/**
 * The one text of a JSON value: fields in the order of their names, nothing between them. Two values are the same when
 * their texts are, however a database or a program ordered their fields.
 *
 * @param value   JSON data; a field that is undefined counts as absent
 */
export function canonicalText(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalText).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null';
  const fields = Object.entries(value).filter(([, part]) => part !== undefined);
  fields.sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${fields.map(([name, part]) => `${JSON.stringify(name)}:${canonicalText(part)}`).join(',')}}`;
}
