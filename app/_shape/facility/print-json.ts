/**
 * Data as JSON for people: two spaces a level, and a list of plain values on one line.
 *
 * @param value JSON data; fields that are undefined are left out
 */
export function printJson(value: unknown, indent = ''): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const inner = `${indent}  `;
  if (Array.isArray(value)) {
    if (value.every((member) => typeof member !== 'object' || member === null))
      return `[${value.map((member) => JSON.stringify(member)).join(', ')}]`;
    return block(
      '[',
      value.map((member) => inner + printJson(member, inner)),
      ']',
      indent,
    );
  }
  const fields = Object.entries(value).filter(([, part]) => part !== undefined);
  return block(
    '{',
    fields.map(([name, part]) => `${inner}${JSON.stringify(name)}: ${printJson(part, inner)}`),
    '}',
    indent,
  );
}

function block(open: string, lines: readonly string[], close: string, indent: string): string {
  return lines.length === 0 ? open + close : `${open}\n${lines.join(',\n')}\n${indent}${close}`;
}
