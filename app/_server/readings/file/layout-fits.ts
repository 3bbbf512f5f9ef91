import 'server-only';
import type { Structure } from '#core/readings/file/find-structure';
import { isHead } from '#core/readings/file/head';
import type { FileLayout, LayoutDraft } from '#core/readings/file/layout';

/** What tells whether a layout is of a file. */
type Fitting = Pick<FileLayout, 'head' | 'delimiter'> & { columns: readonly { place: number }[] };

/** Whether a layout is of files like this one: the same header, or, of files without one, as many columns. */
export function fits(layout: Fitting, structure: Structure): boolean {
  if (layout.delimiter !== structure.delimiter) return false;
  if (layout.head.length > 0 || structure.head.length > 0) return isHead(structure.head, layout.head);
  return layout.columns.every(({ place }) => place < structure.width);
}

/**
 * What somebody said of a file or of one like it, laid over what is likely of this one: columns that they did not speak of
 * stay open.
 */
export function laidOver(said: LayoutDraft | FileLayout, likely: LayoutDraft): LayoutDraft {
  const columns = likely.columns.map((column) => {
    const own = said.columns.find(({ place }) => place === column.place);
    if (!own) return { ...column, sensor: null };
    return { ...column, ...own, flag: own.flag ?? null };
  });
  const time = said.time.as === likely.time.as ? said.time : likely.time;
  return {
    ...likely,
    decimal: said.decimal,
    time,
    zone: said.zone,
    midnight: said.midnight,
    missing: said.missing,
    columns,
    flags: { ...likely.flags, ...said.flags },
    goodFrom: said.goodFrom ?? null,
  };
}

/** A layout that is remembered, as one that may still be changed. */
export function asDraft({ goodFrom, columns, ...rest }: FileLayout): LayoutDraft {
  const open = columns.map((one) => ({ ...one, flag: one.flag ?? null }));
  return { ...rest, goodFrom: goodFrom ?? null, columns: open };
}
