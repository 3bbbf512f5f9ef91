import type { Facility } from '../facility/facility';
import type { System } from '../facility/system';
import type { Column } from '../plans/credit';
import { alarmDesigns } from './alarm-design';
import { askNext } from './ask-next';
import { type Context, contextOf } from './context';
import { caseFindings, merged } from './findings';
import { jobsOf } from './jobs';
import { judge } from './judge';
import { compareCases, compareNearness, leastSpare } from './order';
import { notModelledIn } from './not-modelled';
import { paperworkFindings } from './paperwork';
import { reaches } from './reach';
import { reasonNot } from './reason-not';
import { remedyText } from './remedies';
import type { FaultCase, Finding, OpenInput, SystemReview } from './result';
import type { ReviewCache } from './review-cache';
import { subjectsOf } from './subjects';
import { untestedFinding } from './untested';
import { gravity } from './verdict';

/**
 * Review one system: every fault case in both columns, the paperwork checks, and what they come to.
 * @param on ISO date in the site's zone on which tests are judged
 * @param progress called after each fault case with how many are done and how many there are
 * @param cache what the water did in earlier reviews of this system; with it or without, the review is the same
 * @param ask whether to find out as well which figure to ask for next (some more runs)
 */
export function reviewSystem(
  facility: Facility,
  system: System,
  on: string,
  progress?: (done: number, all: number) => void,
  ask = false,
  cache: ReviewCache | null = null,
): SystemReview {
  const context = contextOf(facility, system, on, null, cache);
  const subjects = subjectsOf(facility, system);
  const cases = subjects.flatMap((subject, i) => {
    const c = reaches(context, subject) ? [judge(context, subject)] : [];
    progress?.(i + 1, subjects.length);
    return c;
  });
  context.isWhole = true;
  const review = assemble(context, cases.sort(compareCases));
  return ask ? { ...review, ...askNext(context, subjects, review.cases, review.findings, review.inputs) } : review;
}

/**
 * Review only what befalls one piece of equipment itself: what a change of its plan or size touches first, in a fraction of the
 * time. What others make of the change is left to the whole review, which finds in the cache what was run here.
 *
 * @param key   of the equipment
 */
export function reviewPiece(
  facility: Facility,
  system: System,
  on: string,
  key: string,
  cache: ReviewCache | null = null,
): SystemReview {
  const context = contextOf(facility, system, on, null, cache);
  const own = subjectsOf(facility, system).filter((subject) => isOf(key, subject.thing));
  const cases = own.flatMap((subject) => (reaches(context, subject) ? [judge(context, subject)] : []));
  return assemble(context, cases.sort(compareCases));
}

/** Whether a fault befalls a piece of equipment itself. */
export function isOf(key: string, thing: FaultCase['thing']): boolean {
  return thing.kind === 'equipment' && thing.key === key;
}

/** Put judged cases together into a review. */
export function assemble(context: Context, cases: FaultCase[]): SystemReview {
  const untested = untestedFinding(context, cases);
  const findings = merged([
    ...barred(context),
    ...caseFindings(context, cases),
    ...paperworkFindings(context),
    ...(untested ? [untested] : []),
  ]);
  const worst = { claimed: worstOf(cases, 'claimed'), tested: worstOf(cases, 'tested') };
  return {
    system: context.system.key,
    name: context.system.name,
    worst,
    cases,
    findings: jobsOf(findings, worst.claimed.case),
    inputs: inputsOf(context),
    askNext: null,
    notModelled: notModelledIn(context.facility, context.system),
    alarms: alarmDesigns(context),
  };
}

/** A system that cannot be judged at all says why, first. */
function barred(context: Context): Finding[] {
  const view = context.view('nominal');
  const reason = reasonNot(view);
  if (!reason) return [];
  const remedy = view.resolved.missing.length > 0 ? 'enter-figure' : 'mend-plan';
  return [
    {
      id: `do:${remedy}`,
      grade: 'high',
      remedy: remedyText(remedy),
      title: 'No fault case can be judged',
      lines: [
        {
          from: { rule: remedy },
          cause: context.system.name,
          consequence: `Not assessed: ${reason}.`,
          figures: [],
          source: 'an unknown is never silently filled in (design rule of Holdfast)',
        },
      ],
    },
  ];
}

function worstOf(cases: FaultCase[], column: Column): SystemReview['worst'][Column] {
  const animals = cases.filter(
    (c) => c[column].outcomes[0]?.harm.class === 'animals' || c[column].verdict === 'not-assessed',
  );
  const [worst] = [...animals].sort(
    (a, b) => gravity(a[column].verdict) - gravity(b[column].verdict) || compareNearness(a[column], b[column]),
  );
  if (!worst) return { verdict: 'holds', case: null, spareS: null };
  const spare = leastSpare(worst[column]);
  return { verdict: worst[column].verdict, case: worst.id, spareS: Number.isFinite(spare) ? spare : null };
}

function inputsOf(context: Context): OpenInput[] {
  const seen = new Set<string>();
  return context.view('nominal').resolved.notes.flatMap((note) => {
    if (seen.has(note.path)) return [];
    seen.add(note.path);
    return [{ ...note, changes: [] }];
  });
}
