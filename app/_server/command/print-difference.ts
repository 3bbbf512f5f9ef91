import 'server-only';
import type { ImportPreview } from '#server/facility/compare';
import { counted } from './said';

/** What an import would do, as plain text. */
export function printDifference({ site, isNew, systems, groups }: ImportPreview): string {
  const head = `${site.name} (${site.key})`;
  if (isNew) return `${head} is new: importing this would store it with ${counted(systems, 'system')}.\n`;
  if (groups.length === 0) return `${head} is stored as the file says: importing this would change nothing.\n`;
  const lines = groups.flatMap(({ name, changes }) => [name, ...changes.map(({ words }) => `  ${words}`), '']);
  return `${[`${head}: importing this would change`, '', ...lines].join('\n').trimEnd()}\n`;
}
