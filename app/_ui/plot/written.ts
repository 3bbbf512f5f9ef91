/** A number as it stands on an axis or in a table: so many decimals, a true minus, and no minus before nothing. */
export function written(value: number, decimals: number): string {
  const plain = value.toFixed(decimals);
  return Number(plain) === 0 ? plain.replace('-', '') : plain.replace('-', '−');
}

/**
 * Heights of labels that keep their order and stay apart, px.
 * @param wanted heights at which they would stand, in any order
 * @param apart least distance
 */
export function spreadHeights(wanted: readonly number[], apart: number): number[] {
  const order = wanted.map((_, i) => i).sort((a, b) => (wanted[a] ?? 0) - (wanted[b] ?? 0));
  const placed = [...wanted];
  let last = Number.NEGATIVE_INFINITY;
  for (const i of order) {
    last = Math.max(wanted[i] ?? 0, last + apart);
    placed[i] = last;
  }
  return placed;
}
