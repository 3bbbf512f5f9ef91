import type { Mode } from './plant';

/** A mode as it was when last looked at: every number of it, in a row. */
export interface KeptMode {
  numbers: Float64Array;
}

/** Keep a mode, to tell later whether another has come in its place. */
export function keptMode(mode: Mode): KeptMode {
  const kept = { numbers: new Float64Array(lengthOf(mode)).fill(Number.NaN) };
  hasTurned(kept, mode);
  return kept;
}

function lengthOf(mode: Mode): number {
  return Object.values(mode).reduce(
    (sum: number, part: Mode[keyof Mode]) => sum + (typeof part === 'number' ? 1 : part.length),
    0,
  );
}

/** Whether any flow, power or regime differs from what was kept; keeps what is there now. */
export function hasTurned({ numbers }: KeptMode, mode: Mode): boolean {
  let turned = false;
  let at = 0;
  const hold = (value: number) => {
    if (numbers[at] !== value) turned = true;
    numbers[at++] = value;
  };
  for (const part of Object.values(mode) as Mode[keyof Mode][]) {
    if (typeof part === 'number') hold(part);
    else for (let i = 0; i < part.length; i++) hold(part[i] as number);
  }
  return turned;
}
