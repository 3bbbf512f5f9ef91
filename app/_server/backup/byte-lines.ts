import 'server-only';
import { BackupFault } from './backup-fault';

const NEW_LINE = 10;
/** Ends the rows of a table. */
export const END = Buffer.from('\\.\n');
const END_AFTER_ROW = Buffer.from('\n\\.\n');
/** bytes a line of words may have; rows may be longer. */
const LONGEST = 16 * 1024 * 1024;

/** A stream of bytes, taken line by line or, where rows stand, as many whole lines as have come. */
export class ByteLines {
  readonly #pieces: AsyncIterator<Buffer>;
  #rest: Buffer = Buffer.alloc(0);
  #isOver = false;

  /** @param pieces   the bytes as they come */
  constructor(pieces: AsyncIterable<Buffer>) {
    this.#pieces = pieces[Symbol.asyncIterator]();
  }

  /**
   * The next line with its end.
   *
   * @returns   null when there is none: the bytes are over, or what is left has no end, or is no line of words
   */
  async line(): Promise<Buffer | null> {
    let searched = 0;
    for (;;) {
      const end = this.#rest.indexOf(NEW_LINE, searched);
      if (end >= 0) return this.#take(end + 1);
      searched = this.#rest.length;
      if (searched > LONGEST || !(await this.#more())) return null;
    }
  }

  /**
   * Whole rows, as many at once as have come, up to the line that ends them, which is given last and alone.
   *
   * @throws   when the bytes are over before that line
   */
  async *rows(): AsyncGenerator<Buffer> {
    for (;;) {
      if (this.#rest.subarray(0, END.length).equals(END)) {
        yield this.#take(END.length);
        return;
      }
      const end = this.#rest.indexOf(END_AFTER_ROW);
      const whole = end >= 0 ? end + 1 : this.#rest.lastIndexOf(NEW_LINE) + 1;
      if (whole > 0) yield this.#take(whole);
      else if (!(await this.#more())) throw new BackupFault('it is cut short');
    }
  }

  /** @returns whether nothing is left */
  async isOver(): Promise<boolean> {
    return this.#rest.length === 0 && !(await this.#more());
  }

  #take(length: number): Buffer {
    const taken = this.#rest.subarray(0, length);
    this.#rest = this.#rest.subarray(length);
    return taken;
  }

  async #more(): Promise<boolean> {
    if (this.#isOver) return false;
    const { done, value } = await this.#pieces.next();
    if (done) this.#isOver = true;
    else this.#rest = this.#rest.length === 0 ? value : Buffer.concat([this.#rest, value]);
    return !done;
  }
}
