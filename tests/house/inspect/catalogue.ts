/** What every entry of a catalogue has, be it a fault or a rule. */
export interface Entry {
  id: string;
}

/** A file of the folder, with what it exports under the expected name. */
export interface EntryFile {
  /** File name without its ending. */
  name: string;
  entry: Entry | undefined;
}

/**
 * How a catalogue and its folder disagree: each file is one entry, named like it, and listed exactly once.
 *
 * @param files   the files of the folder that must hold an entry
 * @param listed  what the catalogue lists
 * @returns       sentences without a full stop; none when they agree
 */
export function catalogueFaults(files: EntryFile[], listed: readonly Entry[]): string[] {
  const faults = files.length === 0 ? ['the folder holds nothing'] : [];
  for (const { name, entry } of files) {
    if (entry === undefined) {
      faults.push(`${name} exports no entry`);
      continue;
    }
    if (entry.id !== name) faults.push(`${name} calls itself ${entry.id}`);
    const times = listed.filter((one) => one === entry).length;
    if (times !== 1) faults.push(`${name} is listed ${times} times`);
  }
  const known = new Set(files.map(({ entry }) => entry));
  for (const one of listed) if (!known.has(one)) faults.push(`${one.id} is listed and has no file`);
  return faults;
}
