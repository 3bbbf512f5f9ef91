/**
 * What this room knows: the laws of water, heat, oxygen and flow that life support rests on, one law a file.
 * What it leaves out: anything that changes by itself: a law has no state.
 * Where the numbers come from: each law says so, `sources.json` lists them, `tests/reference` holds the published values.
 *
 * Every law comes twice. The plain function computes, allocates nothing and is what the integrator calls; outside the
 * published range it goes on by the extension its docstring names, so that no finite input ever yields NaN. The law
 * object beside it knows the range: `inRange` marks a result "outside validity", `checked` refuses.
 */

/** One argument of a law and the values the law was published for; both ends belong to the range. */
export interface Argument {
  readonly name: string;
  /** Empty for a pure number. */
  readonly unit: string;
  readonly low: number;
  readonly high: number;
}

/** A law at the edges, where input may be anything. `A` is the list of its arguments, all plain numbers. */
export interface Law<A extends number[]> {
  /** The name of its file; `sources.json` lists it under this name. */
  readonly id: string;
  /** Unit of the result, empty for a pure number. */
  readonly unit: string;
  readonly arguments: readonly Argument[];
  /** The plain function. */
  readonly compute: (...values: A) => number;
  /** @returns in words, which argument is not as the law needs it; null when all are. */
  breach(...values: A): string | null;
  /** @returns true when every argument is within the published range. */
  inRange(...values: A): boolean;
  /**
   * @returns the law's result
   * @throws RangeError naming the law and the argument, when one is not a number or out of range
   */
  checked(...values: A): number;
}

/**
 * Makes the law object of a law.
 * @param id file name
 * @param unit of the result
 * @param compute the plain function
 * @param args one entry per argument, in order
 * @param relation what must hold between arguments, each within its own range: words for a breach, else null
 */
export function law<A extends number[]>(
  id: string,
  unit: string,
  compute: (...values: A) => number,
  args: { readonly [K in keyof A]: Argument },
  relation: (...values: A) => string | null = () => null,
): Law<A> {
  const list: readonly Argument[] = args;
  const breach = (...values: A): string | null => {
    for (let i = 0; i < list.length; i++) {
      const argument = list[i];
      const words = argument === undefined ? null : breachOf(argument, values[i]);
      if (words !== null) return words;
    }
    return relation(...values);
  };
  const checked = (...values: A): number => {
    const words = breach(...values);
    if (words !== null) throw new RangeError(`${id}: ${words}`);
    return compute(...values);
  };
  return { id, unit, arguments: list, compute, breach, inRange: (...values) => breach(...values) === null, checked };
}

function breachOf({ name, unit, low, high }: Argument, value: number | undefined): string | null {
  if (value === undefined || !Number.isFinite(value)) return `${name} is not a number`;
  if (value >= low && value <= high) return null;
  return `${name} is ${value}, outside ${`${low} to ${high} ${unit}`.trimEnd()}`;
}

/**
 * A value held at the ends of a band: how a law goes on where its own formula would not.
 * NaN stays NaN, so that a broken input is never turned into a plausible one.
 */
export function held(value: number, low: number, high: number): number {
  return Math.min(Math.max(value, low), high);
}

/** K at 0 °C. */
export const KELVIN = 273.15;
