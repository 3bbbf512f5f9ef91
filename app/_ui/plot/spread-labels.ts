/** A label to be set beside others. */
export interface Label {
  x: number;
  width: number;
}

/** Where a label goes: which row, and whether it stands left of its point. */
export interface Place {
  row: number;
  left: boolean;
}

/** Room between two labels of a row, px. */
const APART = 10;

/**
 * Set labels into as few rows as keep them apart, in the order given.
 * @param right px where the drawing ends; a label that would run past it stands left of its point
 */
export function spreadLabels(labels: readonly Label[], right: number): Place[] {
  const taken: [number, number][][] = [];
  return labels.map(({ x, width }) => {
    const left = x + width > right;
    const from = left ? x - width : x;
    const free = taken.findIndex((spans) => spans.every(([a, b]) => from + width + APART < a || from - APART > b));
    const row = free < 0 ? taken.length : free;
    taken[row] = [...(taken[row] ?? []), [from, from + width]];
    return { row, left };
  });
}
