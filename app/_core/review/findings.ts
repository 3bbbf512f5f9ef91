import type { Context } from './context';
import { type RemedyId, remedyFor, remedyText } from './remedies';
import type { FaultCase, Finding, FindingLine, Grade, Judgement, Outcome } from './result';
import { gravity } from './verdict';
import { caseTitle, hourWords, judgementSentence, span, VERDICT_WORDS, worstHour } from './words';
import { FAULTS } from '../faults/catalogue';

const GRAVE = gravity('some-hours');

/** Whether a judgement calls for something to be done. */
export function isGrave(judgement: Judgement): boolean {
  return gravity(judgement.verdict) <= GRAVE;
}

/** How urgent a judgement is: losing animals first, then the floor and the pump. */
export function gradeOf(judgement: Judgement): Grade {
  const animals = judgement.outcomes[0]?.harm.class === 'animals';
  if (!isGrave(judgement)) return 'low';
  if (animals) return judgement.verdict === 'some-hours' ? 'medium' : 'high';
  return judgement.verdict === 'some-hours' ? 'low' : 'medium';
}

/** Order of grades, most urgent first. */
export function gradeRank(grade: Grade): number {
  return ['high', 'medium', 'low'].indexOf(grade);
}

/** Findings of the fault cases that are grave as claimed, one for each remedy. */
export function caseFindings(context: Context, cases: FaultCase[]): Finding[] {
  const groups = new Map<RemedyId, FaultCase[]>();
  for (const c of cases) {
    if (!isGrave(c.claimed)) continue;
    const id = remedyFor(context, c);
    groups.set(id, [...(groups.get(id) ?? []), c]);
  }
  return [...groups].map(([id, members]) => {
    const grade = members.map((c) => gradeOf(c.claimed)).sort((a, b) => gradeRank(a) - gradeRank(b))[0] ?? 'low';
    return {
      id: `do:${id}`,
      grade,
      remedy: remedyText(id),
      title: titleOf(members),
      lines: members.map((c) => caseLine(c, c.claimed)),
    };
  });
}

function titleOf(members: FaultCase[]): string {
  const first = members[0];
  if (!first) return '';
  const rest = members.length - 1;
  return rest > 0 ? `${caseTitle(first)}, and ${rest} more` : caseTitle(first);
}

/** One fault case as a line of a finding. */
export function caseLine(c: FaultCase, judgement: Judgement): FindingLine {
  const [outcome] = judgement.outcomes;
  return {
    from: { case: c.id },
    cause: caseTitle(c),
    consequence: judgementSentence(judgement),
    figures: [{ name: 'verdict', value: VERDICT_WORDS[judgement.verdict] }, ...(outcome ? figuresOf(outcome) : [])],
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
    { name: 'last chance', value: time(outcome.lastChanceS[h]) },
    { name: 'time to put right', value: time(outcome.putRightS[h]) },
    { name: 'harm', value: time(outcome.harmS[h]) },
    { name: 'time to spare', value: spare === null ? 'none' : spare < 0 ? `short by ${span(spare)}` : span(spare) },
  ];
}
