import 'server-only';

/** How many may be at it. */
interface Bounds {
  /** At once, in all and of one source. */
  all: number;
  each: number;
  /** That wait for it, in all; of one source as many as may be at it. */
  waiting: number;
  /** ms that one waits. */
  waitMs: number;
}

interface Waiting {
  source: string;
  /** Told whether it has its turn now. */
  told: (has: boolean) => void;
}

/** Turns at something that takes memory while it is done, so that a burst is dealt with in order and not turned away. */
export class Turns {
  private readonly bounds: Bounds;
  /** Those at it, by source. */
  private readonly underWay = new Map<string, number>();
  private readonly queue: Waiting[] = [];

  constructor(bounds: Bounds) {
    this.bounds = bounds;
  }

  /**
   * Takes a turn, or waits for one, those who came first first.
   *
   * @param source   whose it is
   * @returns        whether it has one, to be ended by `end`; false when too many wait, or it waited too long
   */
  async take(source: string): Promise<boolean> {
    if (this.isFree(source)) {
      this.begin(source);
      return true;
    }
    const { waiting, each, waitMs } = this.bounds;
    const own = this.queue.filter((one) => one.source === source).length;
    if (this.queue.length >= waiting || own >= each) return false;
    return await new Promise<boolean>((resolve) => {
      const one: Waiting = {
        source,
        told: (has) => {
          clearTimeout(timer);
          this.queue.splice(this.queue.indexOf(one), 1);
          resolve(has);
        },
      };
      const timer = setTimeout(() => one.told(false), waitMs);
      this.queue.push(one);
    });
  }

  /** Ends a turn; whoever has waited longest and may have it does. */
  end(source: string): void {
    const left = (this.underWay.get(source) ?? 1) - 1;
    if (left > 0) this.underWay.set(source, left);
    else this.underWay.delete(source);
    const next = this.queue.find((one) => this.isFree(one.source));
    if (!next) return;
    this.begin(next.source);
    next.told(true);
  }

  private isFree(source: string): boolean {
    const all = [...this.underWay.values()].reduce((sum, count) => sum + count, 0);
    return all < this.bounds.all && (this.underWay.get(source) ?? 0) < this.bounds.each;
  }

  private begin(source: string): void {
    this.underWay.set(source, (this.underWay.get(source) ?? 0) + 1);
  }
}
