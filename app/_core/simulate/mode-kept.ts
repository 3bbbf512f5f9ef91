import type { Mode } from './plant';

/** A mode as it was when last looked at: every number of it, in a row. */
export interface KeptMode {
  numbers: Float64Array;
  names: readonly (keyof Mode)[];
}

/** Keep a mode, to tell later whether another has come in its place. */
export function keptMode(mode: Mode): KeptMode {
  const names = Object.keys(mode) as (keyof Mode)[];
  const kept = { numbers: new Float64Array(lengthOf(mode)).fill(Number.NaN), names };
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
export function hasTurned({ numbers, names }: KeptMode, mode: Mode): boolean {
  let turned = false;
  let at = 0;
  for (const name of names) {
    const part = mode[name];
    const count = typeof part === 'number' ? 1 : part.length;
    for (let i = 0; i < count; i++, at++) {
      const value = typeof part === 'number' ? part : (part[i] as number);
      if (numbers[at] === value) continue;
      numbers[at] = value;
      turned = true;
    }
  }
  return turned;
}
