import type { RoundSheet } from '#core/rounds/round-sheet';

const FIELDS: Readonly<Record<string, string>> = {
  name: 'Name',
  rule: 'Due',
  from: 'First day',
  until: 'Last day',
  times: 'Times of the day',
  except: 'Days left out',
  graceMin: 'Late after',
  lines: 'Lines',
  what: 'what is looked at',
  unit: 'unit',
  options: 'words to choose from',
  usual: 'what is usual',
  system: 'where it is looked at',
  tank: 'where it is looked at',
};

/** A fault of a sheet by the names that the page uses: "Line 3 (Weir), unit: must not be blank". */
export function faultSaid({ path, message }: { path: string; message: string }, sheet: RoundSheet): string {
  const parts = path.split('.').filter((part) => part !== 'body' && part !== 'schedule');
  const at = parts.indexOf('lines');
  const line = at >= 0 ? sheet.lines[Number(parts[at + 1])] : undefined;
  const field = parts.findLast((part) => part in FIELDS && part !== 'lines') ?? (line ? undefined : parts.at(-1));
  const said = field === undefined ? '' : (FIELDS[field] ?? field);
  if (!line) return `${said === '' ? 'Sheet' : said}: ${message}`;
  const name = line.kind === 'described' ? (line.what ?? line.key) : line.what;
  return `Line ${Number(parts[at + 1]) + 1} (${name})${said === '' ? '' : `, ${said}`}: ${message}`;
}
