/** Knots a block holds. */
const BLOCK = 32;

/**
 * The state and its rates at every accepted step of a run, for plots and for starting again from any moment.
 * At an event there are two knots at one time: rates before and after it. Kept in blocks of plain numbers, since a review
 * makes hundreds of thousands of them.
 */
export class Knots {
  private readonly blocks: Float64Array[] = [];
  private readonly times: number[] = [];

  /** @param size length of the state */
  constructor(private readonly size: number) {}

  /** Number of knots. */
  get length(): number {
    return this.times.length;
  }

  /** Keep a state and its rates at time t, s; times never fall. */
  add(t: number, x: Float64Array, f: Float64Array): void {
    const at = this.times.length % BLOCK;
    if (at === 0) this.blocks.push(new Float64Array(2 * BLOCK * this.size));
    const block = this.blocks[this.blocks.length - 1] as Float64Array;
    block.set(x, 2 * at * this.size);
    block.set(f, (2 * at + 1) * this.size);
    this.times.push(t);
  }

  /** Time of knot i, s. */
  time(i: number): number {
    return this.times[i] as number;
  }

  /** Number `index` of the state at knot i. */
  value(i: number, index: number): number {
    return (this.blocks[Math.floor(i / BLOCK)] as Float64Array)[2 * (i % BLOCK) * this.size + index] as number;
  }

  /** Rate of that number there, per second. */
  rate(i: number, index: number): number {
    return (this.blocks[Math.floor(i / BLOCK)] as Float64Array)[(2 * (i % BLOCK) + 1) * this.size + index] as number;
  }

  /** Index of the last knot at or before t (the first one, for times before it). */
  before(t: number): number {
    let low = 0;
    let high = this.times.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.time(middle) <= t) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  /** Number `index` of the state at time t between knot i and the next, by the cubic through both values and rates. */
  between(i: number, index: number, t: number): number {
    const h = i + 1 < this.length ? this.time(i + 1) - this.time(i) : 0;
    if (h <= 0 || t <= this.time(i)) return this.value(i, index);
    const z = (t - this.time(i)) / h;
    const y = 1 - z;
    return (
      (1 + 2 * z) * y * y * this.value(i, index) +
      z * y * y * h * this.rate(i, index) +
      z * z * (3 - 2 * z) * this.value(i + 1, index) -
      z * z * y * h * this.rate(i + 1, index)
    );
  }

  /** The whole state at time t; outside the run, its nearest end. */
  stateAt(t: number): Float64Array {
    const i = this.before(t);
    return Float64Array.from({ length: this.size }, (_, index) => this.between(i, index, t));
  }
}
