import 'server-only';
import type { FacilityReview, FaultCase, Finding, FindingLine, SystemReview } from '#core/review/result';
import { caseTitle, judgementSentence, VERDICT_WORDS } from '#core/review/words';

/** Findings and fault cases of a system that are printed in full; the rest is counted. */
const SHOWN = 3;

/** A review as plain text, worst system first. */
export function printReview(review: FacilityReview): string {
  const lines = [
    `${review.name}: review as of ${review.on}`,
    'Holdfast switches nothing and is not a protective device.',
    '',
  ];
  if (review.findings.length > 0) lines.push('The site', ...review.findings.flatMap(findingLines), '');
  for (const system of review.systems) lines.push(...systemLines(system), '');
  return `${lines.join('\n').trimEnd()}\n`;
}

function systemLines(system: SystemReview): string[] {
  const { claimed, tested } = system.worst;
  const lines = [
    `${system.name} (${system.system})`,
    `  as claimed: ${VERDICT_WORDS[claimed.verdict]}   as tested: ${VERDICT_WORDS[tested.verdict]}`,
  ];
  const worst = system.cases.find((c) => c.id === claimed.case) ?? system.cases.find((c) => c.id === tested.case);
  if (worst) lines.push(`  Worst case: ${caseLines(worst)}`);
  lines.push(...system.findings.slice(0, SHOWN).flatMap(findingLines));
  const rest = system.findings.length - SHOWN;
  if (rest > 0) lines.push(`  … and ${rest} more findings (--json shows all)`);
  const asked = system.inputs.find((input) => input.path === system.askNext);
  if (asked)
    lines.push(`  Ask next: ${asked.name} (taken as ${asked.value ?? 'unknown'} ${asked.unit}, ${asked.source})`);
  lines.push(`  ${system.cases.length} fault cases judged: ${tally(system.cases)}`);
  return lines;
}

function caseLines(c: FaultCase): string {
  const marks = [
    c.unsure ? 'unsure' : '',
    c.optimistic ? 'optimistic: still water is not mixed' : '',
    c.bound ? 'a bound: the oxidant may come to less' : '',
    c.outsideValidity ? 'outside validity' : '',
  ];
  const said = marks.filter((mark) => mark !== '').join('; ');
  return `${caseTitle(c)}. ${judgementSentence(c.claimed.outcomes.length > 0 ? c.claimed : c.tested)}${said ? ` [${said}]` : ''}`;
}

function findingLines(finding: Finding): string[] {
  return [
    `  [${finding.grade}] ${finding.remedy}`,
    ...finding.lines.slice(0, SHOWN).map(lineWords),
    ...(finding.lines.length > SHOWN ? [`      … and ${finding.lines.length - SHOWN} more`] : []),
  ];
}

/** A case tells its figures in its sentence; what the papers say has them beside it, if there are any. */
function lineWords({ from, cause, consequence, figures }: FindingLine): string {
  const beside = 'case' in from ? '' : figures.map(({ name, value }) => `${name}: ${value}`).join('; ');
  return `      ${cause}: ${consequence}${beside && ` (${beside})`}`;
}

function tally(cases: FaultCase[]): string {
  const counts = new Map<string, number>();
  for (const c of cases)
    counts.set(VERDICT_WORDS[c.claimed.verdict], (counts.get(VERDICT_WORDS[c.claimed.verdict]) ?? 0) + 1);
  return [...counts].map(([verdict, n]) => `${n} ${verdict}`).join(', ');
}
