/** A dead band that leaves a value between two limits at which the alarm clears. */
export function bandWithin(
  { above = Infinity, below = -Infinity }: { above?: number; below?: number },
  deadBand: number,
): number {
  return Math.max(0, Math.min(deadBand, (above - below) / 2));
}
