/** One thing that is wrong with a facility file, and where. */
export interface FileError {
  /** For example `systems[2].equipment[0].plan.regulation.lowC`; empty for the file as a whole. */
  path: string;
  /** Counted from 1. */
  line: number;
  /** Counted from 1. */
  column: number;
  /** In plain words: names the field, what it must be, and what was found. */
  message: string;
}
