/** Where something stands in a facility: field names and list positions from the top, for example `['systems', 0, 'room']`. */
export type Path = readonly (string | number)[];

/**
 * A path as people read it.
 *
 * @param path field names and list positions from the top
 * @returns for example `systems[2].equipment[0].plan.regulation.lowC`; empty for the file as a whole
 */
export function formatPath(path: Path): string {
  return path.map((step, at) => (typeof step === 'number' ? `[${step}]` : at === 0 ? step : `.${step}`)).join('');
}

/**
 * The field a path ends in, for use in a sentence.
 *
 * @param path field names and list positions from the top
 * @returns the last field name with its list positions, for example `sensors[0]`; `the file` for the empty path
 */
export function fieldOf(path: Path): string {
  const from = path.findLastIndex((step) => typeof step === 'string');
  return path.length === 0 ? 'the file' : formatPath(path.slice(Math.max(from, 0)));
}
