import type { FaultCase, Finding, FindingLine } from '#core/review/result';
import { toldCase } from '#core/review/told-case';
import { figure } from '../../units/figures';
import { harmAtWorst, type Speech } from '../../words/said';
import { cautionsFor } from '../../system/cautions-for';
import { type Block, type Part, text } from '../block';
import type { DocumentData } from '../document-data';
import { caseAddress, tellCase, toldColumn } from './tell-case';

/** Findings that are read in full; the rest is folded. */
const OPEN = 3;

/** What to do, most urgent first: three jobs in full, the rest folded; each with all that is known of its gravest case. */
export function findingsPart(data: DocumentData): Part {
  const { findings } = data.review;
  // The first that a fault case leads is read in full.
  const open = findings.find(({ lines: [line] }) => line && 'case' in line.from);
  const entries = findings.map((finding, i) => entryOf(data, finding, i + 1, finding === open));
  const rest = entries.slice(OPEN);
  return {
    id: 'findings',
    title: 'Findings',
    wide: true,
    note: 'Grouped by what would answer them, most urgent first.',
    blocks: [
      ...(entries.length === 0 ? [text('Nothing was found.')] : entries.slice(0, OPEN)),
      ...(rest.length > 0
        ? [
            {
              kind: 'fold' as const,
              title: `${rest.length} more ${rest.length === 1 ? 'finding' : 'findings'}`,
              blocks: rest,
            },
          ]
        : []),
    ],
  };
}

/** Findings about the site as a whole; null when there are none. */
export function sitePart(data: DocumentData): Part | null {
  if (data.siteFindings.length === 0) return null;
  return {
    id: 'site-findings',
    title: 'Findings about the site',
    wide: true,
    note: 'They concern every system of the site.',
    blocks: data.siteFindings.map((finding, i) => entryOf(data, finding, i + 1, false)),
  };
}

function entryOf(data: DocumentData, finding: Finding, number: number, isOpen: boolean): Block {
  const [first, ...rest] = finding.lines;
  const cautions = cautionsFor(finding);
  return {
    kind: 'finding',
    id: finding.id,
    number,
    grade: finding.grade,
    says: finding.remedy,
    blocks: [
      ...cautions.map((caution) => text({ strong: 'Before this work: ' }, caution)),
      ...(first ? tellLine(data, first, isOpen ? 'open' : 'folded') : []),
      ...(rest.length > 0
        ? [
            {
              kind: 'fold' as const,
              title: `and ${rest.length} more`,
              blocks: rest.flatMap((line) => tellLine(data, line, 'short')),
            },
          ]
        : []),
    ],
  };
}

/** One cause of a finding. @param how much of its fault case is told: all, all with most of it folded, or its harm alone */
function tellLine(data: DocumentData, line: FindingLine, how: 'open' | 'folded' | 'short'): Block[] {
  const found = caseOf(data, line);
  if (!found) {
    const figures = line.figures.map((one) => `${one.name}: ${figureOf(data.speech, one)}`).join('; ');
    const says = [{ strong: line.cause }, `. ${line.consequence}`];
    return [text(...says, figures === '' ? '' : ` (${figures})`), text(`Source: ${line.source}.`)];
  }
  const link = { link: caseAddress(data.at, found.id), says: line.cause };
  const [outcome] = found[toldColumn(found)].outcomes;
  if (how !== 'short') return [text(link, '.'), ...tellCase(data, found, how === 'open')];
  return [text(link, `. ${outcome ? harmAtWorst(data.speech, outcome) : line.consequence} Source: ${line.source}.`)];
}

/** The fault case that a cause is about, led by the harm that it speaks of. */
function caseOf({ review }: DocumentData, { from }: FindingLine): FaultCase | undefined {
  const found = 'case' in from ? review.cases.find(({ id }) => id === from.case) : undefined;
  return found && toldCase(found);
}

function figureOf({ units }: Speech, { value, measure }: FindingLine['figures'][number]): string {
  return measure ? figure(units, measure.kind, measure.value) : value;
}
