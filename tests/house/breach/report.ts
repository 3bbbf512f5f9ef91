/** One complaint of a checker: which file, which rule. */
export interface Complaint {
  file: string;
  rule: string;
}

/** What a checker said about a tree. */
export interface Report {
  /** Exit code of its process: 0 means it found nothing to complain about. */
  exitCode: number;
  /** Number of files it says it has read. */
  filesRead: number;
  complaints: Complaint[];
  /** Its own words, for the message of a failing test. */
  text: string;
}
