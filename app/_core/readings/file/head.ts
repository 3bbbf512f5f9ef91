import type { FileRow } from './layout';

/** Whether a row is a remark: it begins with "#". A header may begin so too. */
export function isRemark({ cells }: FileRow): boolean {
  return cells[0]?.startsWith('#') ?? false;
}

/** The cells of a row without the "#" that some loggers put before a header. */
export function uncommented(cells: readonly string[]): string[] {
  const [first = '', ...rest] = cells;
  if (!first.startsWith('#')) return [...cells];
  const bare = first.replace(/^#+\s*/, '');
  return bare === '' ? rest : [bare, ...rest];
}

/** Whether a row is the header that a layout remembers: the same names, whatever their case and the blanks in them. */
export function isHead(cells: readonly string[], head: readonly string[]): boolean {
  const bare = uncommented(cells);
  return (
    head.length > 0 && bare.length === head.length && bare.every((name, i) => plain(name) === plain(head[i] ?? ''))
  );
}

function plain(name: string): string {
  return name.trim().replace(/\s+/g, ' ').toLowerCase();
}
