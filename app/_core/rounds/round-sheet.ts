import type { ChoiceOption, Range } from './check';
import type { Schedule } from './schedule';

/** What a line says besides what it is. */
interface LineWords {
  /** The same for as long as the line is there: entries hang on it. */
  key: string;
  /** Somebody else signs it as well. */
  secondSignature?: true;
}

/** A line that follows from the description, in other words or with a range where those are given. */
export interface DescribedLine extends LineWords {
  kind: 'described';
  what?: string;
  /** What is usual, in the facility file's unit; of what was used, a day. */
  usual?: Range;
}

/** A line of the sheet's own, looked at where it says: in a system, at a tank of it, or with what belongs to the whole site. */
interface OwnWords extends LineWords {
  what: string;
  why?: string;
  system?: string;
  tank?: string;
}

export interface OwnFigureLine extends OwnWords {
  kind: 'figure';
  unit: string;
  usual?: Range;
}

export interface OwnChoiceLine extends OwnWords {
  kind: 'choice';
  options: ChoiceOption[];
}

export interface OwnDosesLine extends OwnWords {
  kind: 'doses';
  dose?: string;
  /** Doses a day. */
  usual?: Range;
}

export interface OwnPlainLine extends OwnWords {
  kind: 'yes-no' | 'text' | 'photo';
}

export type OwnLine = OwnFigureLine | OwnChoiceLine | OwnDosesLine | OwnPlainLine;
export type SheetLine = DescribedLine | OwnLine;

/** Least role of who may sign. */
export const SIGNERS = ['aquarist', 'lead', 'manager'] as const;
export type Signer = (typeof SIGNERS)[number];

/** A sheet that the site keeps: what is looked at, how often, and who signs it. In force as it stands in the facility file. */
export interface RoundSheet {
  key: string;
  name: string;
  schedule: Schedule;
  /** Minutes after which it is late; left out: by how often it comes round. */
  graceMin?: number;
  /** Least role of who may sign; left out: whoever may walk it. */
  signedBy?: Signer;
  /** Somebody else signs the whole of it as well. */
  secondSignature?: true;
  /** In order; places are walked clean before dirty whatever the order here. */
  lines: SheetLine[];
}
