import type { Context } from '../context';
import type { RemedyId } from '../remedies';
import type { FindingLine, Grade } from '../result';

/** One thing a rule finds wrong. */
export interface Breach {
  /** What it concerns, by name. */
  cause: string;
  /** What follows from it, in a sentence. */
  consequence: string;
  figures: FindingLine['figures'];
  /** Where the simulation knows better how grave it is here than the rule in general. */
  grade?: Grade;
}

/** What a rule looks at: a system in its site, with the views the review has made of it. */
export type RuleContext = Context;

/** A check of plans, wiring or paperwork; one a file. */
export interface Rule {
  /** The file's name. */
  id: string;
  title: string;
  /** Why it matters, in a sentence. */
  why: string;
  source: string;
  grade: Grade;
  remedy: RemedyId;
  /** Told by a finding of its own, which says more than the paperwork can; left out of the paperwork findings. */
  toldApart?: true;
  check: (context: RuleContext) => Breach[];
  /** An example that passes, and one that fails; both are run by the tests. */
  passing: () => RuleContext;
  failing: () => RuleContext;
}
