import type { SafeguardKind } from '../../plans/safeguard';
import { nearestWord } from '../nearest-word';
import { fieldOf, type Path } from '../path';

/** One thing that does not fit together. `absence`: true only if nothing is missing from what was looked at. */
export interface ReferenceProblem {
  path: Path;
  message: string;
  about: 'reference' | 'absence';
}

/** Collects problems; a checker says where and what, and goes on. */
export class Report {
  readonly problems: ReferenceProblem[] = [];

  /** @param unread keys that stand in the file but could not be read; a reference to one of them is let be */
  constructor(readonly unread: ReadonlySet<string>) {}

  /** Something contradicts what stands in the file. The message is a sentence that begins with the field. */
  wrong(path: Path, rest: string): void {
    this.problems.push({ path, message: `${fieldOf(path)} ${rest}`, about: 'reference' });
  }

  /** Something that ought to stand in the file does not. */
  absent(path: Path, rest: string): void {
    this.problems.push({ path, message: `${fieldOf(path)} ${rest}`, about: 'absence' });
  }

  /**
   * Says so unless `key` is known.
   *
   * @param what what the key should name, with its article, for example `a tank of this system`
   * @returns whether the key is known
   */
  names(path: Path, key: string, what: string, known: ReadonlySet<string> | ReadonlyMap<string, unknown>): boolean {
    if (known.has(key)) return true;
    if (!this.unread.has(key)) {
      const near = nearestWord(key, known.keys());
      this.wrong(path, `must be the key of ${what}; "${key}" is none${near ? `. Did you mean "${near}"?` : ''}`);
    }
    return false;
  }

  /** Says so for each of a list of keys that is not known. */
  namesEach(path: Path, list: readonly string[], what: string, known: ReadonlySet<string>): void {
    for (const [at, key] of list.entries()) this.names([...path, at], key, what, known);
  }

  /** Says so unless `key` names a safeguard of this kind. An absent key is fine: the safeguard is then not credited. */
  safeguard(path: Path, key: string | undefined, kind: SafeguardKind, known: ReadonlyMap<string, SafeguardKind>): void {
    if (key === undefined || !this.names(path, key, 'a safeguard', known)) return;
    const found = known.get(key);
    if (found !== kind) this.wrong(path, `must name a safeguard of kind ${kind}; "${key}" is of kind ${found}`);
  }
}
