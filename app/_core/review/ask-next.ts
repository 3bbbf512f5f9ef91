import type { Context } from './context';
import { changesOn, sidesOf } from './range';
import type { FaultCase, Finding, OpenInput } from './result';
import type { Subject } from './trial';

/** Unsure cases that are asked figure by figure: as many as there are findings that are read in full. Each costs a run a figure. */
const MOST = 3;

/** What a review says, and for which cases, of the figures that would change it. */
export interface Asked {
  inputs: OpenInput[];
  askNext: string | null;
  askedOf: string[];
}

/**
 * Which single figure, at the bad end of its plausible range and all others as they are, would change the verdict of a case
 * that is unsure: of the gravest one, and of those that lead the findings.
 * @param cases gravest first
 * @param findings most urgent first
 * @returns the inputs with the cases noted on those that change them; the path to ask for next, null when no figure changes
 *   the gravest alone; and the cases that were asked about, gravest first
 */
export function askNext(
  context: Context,
  subjects: readonly Subject[],
  cases: readonly FaultCase[],
  findings: readonly Finding[],
  inputs: readonly OpenInput[],
): Asked {
  const asked = worthAsking(cases, findings).flatMap((c) => {
    const subject = subjects.find((s) => s.fault.id === c.fault && s.thing.key === c.thing.key && s.state === c.state);
    return subject ? [{ case: c, subject }] : [];
  });
  const noted = inputs.map((input) => {
    const changed = asked.filter(({ case: c, subject }) =>
      sidesOf(subject).some((side) => changesOn(context, subject, c.claimed, side, input.path)),
    );
    return changed.length > 0 ? { ...input, changes: changed.map((one) => one.case.id) } : input;
  });
  const askedOf = asked.map((one) => one.case.id);
  const [gravest] = askedOf;
  return { inputs: noted, askNext: gravest === undefined ? null : (narrowing(noted, gravest)?.path ?? null), askedOf };
}

/** The figure that would narrow one case most, of those that change its verdict alone; null when none does. */
export function narrowing(inputs: readonly OpenInput[], caseId: string): OpenInput | null {
  const [widest] = inputs.filter(({ changes }) => changes.includes(caseId)).sort((a, b) => spread(b) - spread(a));
  return widest ?? null;
}

/** The gravest unsure case, and the unsure ones that lead findings. */
function worthAsking(cases: readonly FaultCase[], findings: readonly Finding[]): FaultCase[] {
  const unsure = cases.filter((c) => c.unsure);
  const leads = findings.flatMap(({ lines: [line] }) => (line && 'case' in line.from ? [line.from.case] : []));
  return unsure.filter((c, i) => i === 0 || leads.includes(c.id)).slice(0, MOST);
}

/** Width of a plausible range as a part of the figure itself. */
function spread({ value, low, high }: OpenInput): number {
  if (low === undefined || high === undefined || !value) return Number.POSITIVE_INFINITY;
  return (high - low) / Math.abs(value);
}
