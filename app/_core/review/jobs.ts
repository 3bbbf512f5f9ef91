import { gradeRank } from './findings';
import type { Finding } from './result';

/**
 * Findings as jobs: those that ask for the same become one, and the most urgent come first. Among equals the job that answers
 * the worst fault case leads, then the one that answers most cases, then paperwork.
 * @param worst id of the worst fault case
 */
export function jobsOf(findings: readonly Finding[], worst: string | null): Finding[] {
  const jobs = new Map<string, Finding>();
  for (const finding of findings) {
    const known = jobs.get(finding.remedy);
    jobs.set(finding.remedy, known ? joined(known, finding) : finding);
  }
  const answers = ({ lines }: Finding) => lines.filter(({ from }) => 'case' in from).length;
  const answersWorst = ({ lines }: Finding) =>
    worst !== null && lines.some(({ from }) => 'case' in from && from.case === worst);
  return [...jobs.values()].sort(
    (a, b) =>
      gradeRank(a.grade) - gradeRank(b.grade) ||
      Number(answersWorst(b)) - Number(answersWorst(a)) ||
      answers(b) - answers(a) ||
      b.lines.length - a.lines.length,
  );
}

function joined(a: Finding, b: Finding): Finding {
  const grade = gradeRank(b.grade) < gradeRank(a.grade) ? b.grade : a.grade;
  return { ...a, grade, lines: [...a.lines, ...b.lines] };
}
