/** A rectangle, pt. */
export interface Area {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/**
 * Slanting strokes that fill a rectangle, as the path of a drawing: paper has no patterns.
 *
 * @param apart   distance of two strokes along an edge, pt, above 0
 */
export function hatching({ left, right, top, bottom }: Area, apart: number): string {
  const strokes: string[] = [];
  for (let at = left - (bottom - top) + apart / 2; at < right; at += apart) {
    // A stroke runs from (at, bottom) up to (at + height, top); what lies outside is cut off.
    const from = Math.max(at, left);
    const to = Math.min(at + (bottom - top), right);
    if (to > from)
      strokes.push(`M${round(from)} ${round(bottom - (from - at))}L${round(to)} ${round(bottom - (to - at))}`);
  }
  return strokes.join('');
}

function round(n: number): string {
  return n.toFixed(2);
}
