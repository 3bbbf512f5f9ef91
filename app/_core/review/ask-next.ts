import type { Context } from './context';
import { changesOn, sidesOf } from './range';
import type { FaultCase, OpenInput } from './result';
import type { Subject } from './trial';

/**
 * Which single figure, at the bad end of its plausible range and all others as they are, would change the verdict of the
 * gravest case that is unsure: the one worth measuring first.
 * @param cases gravest first
 * @returns the inputs with the case noted on those that change it, and the path to ask for; null when no figure does it alone
 */
export function askNext(
  context: Context,
  subjects: readonly Subject[],
  cases: readonly FaultCase[],
  inputs: readonly OpenInput[],
): { inputs: OpenInput[]; askNext: string | null } {
  const open = cases.find((c) => c.unsure);
  const subject = subjects.find(
    (s) => open && s.fault.id === open.fault && s.thing.key === open.thing.key && s.state === open.state,
  );
  if (!open || !subject) return { inputs: [...inputs], askNext: null };
  const noted = inputs.map((input) => {
    const changed = sidesOf(subject).some((side) => changesOn(context, subject, open.claimed, side, input.path));
    return changed ? { ...input, changes: [open.id] } : input;
  });
  const [widest] = noted.filter((input) => input.changes.length > 0).sort((a, b) => spread(b) - spread(a));
  return { inputs: noted, askNext: widest?.path ?? null };
}

/** Width of a plausible range as a part of the figure itself. */
function spread({ value, low, high }: OpenInput): number {
  if (low === undefined || high === undefined || !value) return Number.POSITIVE_INFINITY;
  return (high - low) / Math.abs(value);
}
