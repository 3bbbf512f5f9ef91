import type { Column } from '../plans/credit';
import type { RemedyId } from './remedies';
import type { CaseThing, Harm, HarmClass, Verdict } from './result';
import type { StateName } from '../facility/system';

/** What takes part in a combination: a failure mode of a thing, or a safeguard that does not work. */
export type Part =
  | { kind: 'fault'; fault: string; title: string; thing: CaseThing }
  | { kind: 'safeguard'; key: string; name: string };

/**
 * More than one thing wrong at once: a fault while a safeguard is dead, several faults of one cause, or a fault followed by
 * another.
 */
export interface Combination {
  /** Stable: made of its parts. */
  id: string;
  kind: 'safeguard-dead' | 'common-cause' | 'two-step';
  state: StateName;
  parts: Part[];
  /** Why these go together, in words: "both hang on relay board 1". Empty for a dead safeguard. */
  because: string;
  /** Verdict of the gravest part alone, as claimed; `holds` where no part is a fault case by itself. */
  alone: Verdict;
  verdict: Verdict;
  /** Null when nothing is harmed. */
  harm: Harm | null;
  /** Least time to spare, s; null when nobody ever comes or nothing is harmed. */
  spareS: number | null;
  /** Order of magnitude a year, where every part has a figure entered with a source; else null. */
  perYear: number | null;
}

/** A smallest set of things wrong that leads to harm before anybody could put it right. */
export interface MinimalSet {
  parts: Part[];
  state: StateName;
  verdict: Verdict;
  harm: Harm;
  spareS: number | null;
  perYear: number | null;
}

/** What one change would do to one fault case. */
export interface Effect {
  /** Id of the fault case. */
  case: string;
  title: string;
  from: Verdict;
  to: Verdict;
  /** Whom or what it harms before and after; null for nothing. Water on the floor in place of lost animals is won, whatever the verdicts. */
  befalls: { from: HarmClass | null; to: HarmClass | null };
  /** Time to spare won (below 0: lost) at the worst hour, s; null where one of the two is without end. */
  gainS: number | null;
}

/** One change tried in the model. */
export interface Fix {
  /** Stable: the remedy and what it is done to. */
  id: string;
  remedy: RemedyId;
  /** The column in which it wins: `tested` for the test of a safeguard. */
  column: Column;
  /** What is done to what: "A high cut-out on Heater 1". */
  title: string;
  /** Fault cases that become less grave, most won first. */
  wins: Effect[];
  /** Fault cases that become graver: its side effects. */
  losses: Effect[];
}

/** What to fix first: each change alone, and the order in which to make them. */
export interface FixFirst {
  /** Most won first; changes that win nothing are left out. */
  alone: Fix[];
  /** Greedily: each the best on top of those before; with how many cases are still not covered after it. */
  order: { fix: string; wins: number; left: number; losses: Effect[] }[];
  /** Cases that are not covered today. */
  open: number;
}

/** How much more stock the system could carry before the aeration left with its largest unit lost no longer carries the night. */
export interface DemandDrift {
  tank: string;
  /** Equipment whose loss takes most of the gas exchange. */
  unit: string;
  /** kg of animals today and at which the night is just carried. */
  nowKg: number;
  carriesKg: number;
}

/** The longer look at one system: what single faults do not show. */
export interface Study {
  system: string;
  /** ISO date tests are judged on. */
  on: string;
  combinations: Combination[];
  minimalSets: MinimalSet[];
  /** The mildest verdict that counts in `minimalSets`. */
  cut: Verdict;
  fixFirst: FixFirst;
  drift: DemandDrift[];
  /** Fault cases and combinations tried. */
  tried: number;
}

/** The longer look at a system, or how far it is. */
export type StudyState =
  | { state: 'ready'; study: Study }
  /** Being computed, or waiting for it; `before` is what it said before a change. */
  | { state: 'under-way'; before: Study | null }
  | { state: 'broken' }
  /** This machine does without. */
  | { state: 'left-out' };

/** What there is of a longer look, be it that of before a change; null where there is none. */
export function heldStudy(state: StudyState): Study | null {
  if (state.state === 'ready') return state.study;
  return state.state === 'under-way' ? state.before : null;
}
