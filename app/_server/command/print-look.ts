import 'server-only';
import type { FileLook } from '../readings/file/look-at-file';
import { counted } from './said';

/**
 * What is known of a file, for a terminal; as JSON, the layout as far as it is known, to be mended and given with --says.
 */
export function printLook(seen: FileLook, json: boolean): string {
  if (json) return `${JSON.stringify(seen.draft, null, 2)}\n`;
  const { draft, questions, preview, raw } = seen;
  const lines = [
    `${seen.name}: ${counted(seen.rows, 'row')}, ${draft.encoding}, cells parted by ${draft.delimiter}`,
    ...seen.preamble.map((line) => `  above the header: ${line}`),
    `zone: ${draft.zone ?? 'not said'}`,
    ...(seen.before ? [`taken in before: ${seen.before}`] : []),
    ...(seen.from ? [`read as in the layout ${seen.from.name}`] : []),
    ...columnLines(seen),
    ...questions.map(({ field, says }) => `to be said: ${field}: ${says}`),
    ...(preview
      ? preview.map(({ line, at, fault, values }) => {
          const said = values.map(({ raw: cell, value, quality, reason }) =>
            [`${cell} → ${value}`, quality, reason ?? ''].join(' ').trim(),
          );
          return `line ${line}: ${at ?? fault ?? ''} ${said.join(' | ')}`;
        })
      : [...raw.first, ...raw.last].map(({ line, cells }) => `line ${line}: ${cells.join(' | ')}`)),
  ];
  return `${lines.join('\n')}\n`;
}

function columnLines({ draft, columns, sensors }: FileLook): string[] {
  return draft.columns.map(({ place, sensor, unit, zero }) => {
    const column = columns[place];
    const own = sensors.find(({ id }) => id === sensor);
    const is = own ? `${own.system}/${own.key} in ${unit ?? '?'}` : 'not taken';
    const zeros = column && column.zeros > 0 ? `, ${column.zeros} times 0 (${zero ?? 'meaning not said'})` : '';
    return `column ${place} ${column?.name ?? ''}: ${is}${zeros}`;
  });
}
