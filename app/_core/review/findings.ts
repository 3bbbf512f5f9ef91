import type { Context } from './context';
import { type RemedyId, remedyFor, remedyText } from './remedies';
import type { FaultCase, Finding, FindingLine, Grade, Judgement, Outcome } from './result';
import { gravity } from './verdict';
import { caseTitle, hourWords, outcomeSentence, span, VERDICT_WORDS, worstHour } from './words';
import { FAULTS } from '../faults/catalogue';

const GRAVE = gravity('some-hours');

/** Order of grades, most urgent first. */
export function gradeRank(grade: Grade): number {
  return ['high', 'medium', 'low'].indexOf(grade);
}

/** How urgent an outcome is: losing animals first, then the floor and the pump. */
function gradeOfOutcome({ verdict, harm }: Outcome): Grade {
  if (gravity(verdict) > GRAVE) return 'low';
  if (harm.class === 'animals') return verdict === 'some-hours' ? 'medium' : 'high';
  return verdict === 'some-hours' ? 'low' : 'medium';
}

/** The outcome of a judgement that calls most urgently for something to be done; null when none does. */
function urgent({ outcomes }: Judgement): Outcome | null {
  const grave = outcomes.filter(({ verdict }) => gravity(verdict) <= GRAVE);
  const [first] = grave.sort((a, b) => gradeRank(gradeOfOutcome(a)) - gradeRank(gradeOfOutcome(b)));
  return first ?? null;
}

/** How urgent a judgement is: as its most urgent outcome. Animals that can be saved do not hide a floor that is flooded. */
export function gradeOf(judgement: Judgement): Grade {
  const outcome = urgent(judgement);
  return outcome ? gradeOfOutcome(outcome) : 'low';
}

/**
 * The outcome of a fault case, as claimed, that calls most urgently for something to be done. That the floor is wet is no news of
 * a fault that is water on the floor: there, only the animals and the pump count.
 */
export function pressingIn(c: FaultCase): Outcome | null {
  const wets = FAULTS.find(({ id }) => id === c.fault)?.shows.includes('floor') === true;
  const { claimed } = c;
  return urgent(
    wets ? { ...claimed, outcomes: claimed.outcomes.filter(({ harm }) => harm.class !== 'floor') } : claimed,
  );
}

/** A fault case with what is urgent about it. */
interface Pressing {
  case: FaultCase;
  outcome: Outcome;
}

/** Findings of the fault cases that are grave as claimed, one for each remedy. */
export function caseFindings(context: Context, cases: FaultCase[]): Finding[] {
  const groups = new Map<RemedyId, Pressing[]>();
  for (const c of cases) {
    const outcome = pressingIn(c);
    if (!outcome) continue;
    const id = remedyFor(context, c, outcome);
    groups.set(id, [...(groups.get(id) ?? []), { case: c, outcome }]);
  }
  return [...groups].map(([id, found]) => {
    const members = found.sort((a, b) => rankOf(a) - rankOf(b));
    return {
      id: `do:${id}`,
      grade: members[0] ? gradeOfOutcome(members[0].outcome) : 'low',
      remedy: remedyText(id),
      title: titleOf(members),
      lines: members.map(caseLine),
    };
  });
}

function rankOf({ outcome }: Pressing): number {
  return gradeRank(gradeOfOutcome(outcome));
}

function titleOf(members: Pressing[]): string {
  const [first, ...rest] = members;
  if (!first) return '';
  return rest.length > 0 ? `${caseTitle(first.case)}, and ${rest.length} more` : caseTitle(first.case);
}

/** One fault case as a line of a finding. */
function caseLine({ case: c, outcome }: Pressing): FindingLine {
  return {
    from: { case: c.id },
    cause: caseTitle(c),
    consequence: outcomeSentence(outcome),
    figures: [{ name: 'verdict', value: VERDICT_WORDS[outcome.verdict] }, ...figuresOf(outcome)],
    source: FAULTS.find((f) => f.id === c.fault)?.source ?? '',
  };
}

/** The figures of an outcome at its worst hour, ready to read. */
export function figuresOf(outcome: Outcome): FindingLine['figures'] {
  const h = worstHour(outcome);
  const time = (s: number | null | undefined) => (s === null || s === undefined ? 'never' : span(s));
  const spare = outcome.spareS[h] ?? null;
  return [
    { name: 'worst onset', value: hourWords(h) },
    { name: 'time to notice', value: time(outcome.noticeS[h]) },
    { name: 'last chance', value: (outcome.lastChanceS[h] ?? 0) > 0 ? time(outcome.lastChanceS[h]) : 'none' },
    { name: 'time to put right', value: time(outcome.putRightS[h]) },
    { name: 'harm', value: time(outcome.harmS[h]) },
    { name: 'time to spare', value: spare === null ? 'none' : spare < 0 ? `short by ${span(spare)}` : span(spare) },
  ];
}

/** Findings that ask for the same thing become one: what was simulated leads, what the papers show follows. */
export function merged(findings: readonly Finding[]): Finding[] {
  const byId = new Map<string, Finding>();
  for (const finding of findings) {
    const known = byId.get(finding.id);
    if (!known) {
      byId.set(finding.id, finding);
      continue;
    }
    const grade = gradeRank(finding.grade) < gradeRank(known.grade) ? finding.grade : known.grade;
    byId.set(finding.id, { ...known, grade, lines: [...known.lines, ...finding.lines] });
  }
  return [...byId.values()];
}
