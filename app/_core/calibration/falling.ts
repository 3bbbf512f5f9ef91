import type { Point, Span } from './stretch';

/** K that readings must turn by before it counts as a turn. Common practice, no source. */
const TURN = 0.12;

/** A leg of readings from a crest down to a trough. */
export interface Fall extends Span {
  from: number;
  to: number;
}

/**
 * Where readings fall: from each crest to the trough that follows it, however uneven the way.
 *
 * @param points   in order of time
 * @param turn     by how much they must turn, in their unit
 */
export function fallsOf(points: readonly Point[], turn = TURN): Fall[] {
  const [first] = points;
  if (!first) return [];
  const falls: Fall[] = [];
  let crest = first;
  let trough = first;
  let isFalling: boolean | null = null;
  const close = () => {
    if (isFalling && crest.value - trough.value >= turn)
      falls.push({ fromMs: crest.atMs, toMs: trough.atMs, from: crest.value, to: trough.value });
  };
  for (const point of points) {
    if (point.value > crest.value && isFalling !== true) crest = point;
    if (point.value < trough.value && isFalling !== false) trough = point;
    if (isFalling !== true && crest.value - point.value >= turn) {
      isFalling = true;
      trough = point;
    } else if (isFalling !== false && point.value - trough.value >= turn) {
      close();
      isFalling = false;
      crest = point;
    }
  }
  close();
  return falls;
}
