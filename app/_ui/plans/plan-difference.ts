import type { Plan } from '#core/plans/plan';
import { type PlanLine, planLines } from '../words/plan-lines';
import type { Speech } from '../words/said';

/** One line of two plans side by side. */
export interface LineChange {
  line: PlanLine;
  /** `goes`: only the former has it; `comes`: only the latter; `stays`: both. */
  way: 'stays' | 'comes' | 'goes';
}

const LAYERS: readonly PlanLine['layer'][] = ['cut-out', 'interlock', 'lost sensing', 'operating state', 'regulation'];

/** Two plans line by line, layer by layer in their fixed order; in each layer what stays, what goes, what comes. */
export function planDifference(speech: Speech, before: Plan, after: Plan): LineChange[] {
  const was = planLines(speech, { plan: before });
  const is = planLines(speech, { plan: after });
  const has = (lines: readonly PlanLine[], one: PlanLine) => lines.some((line) => keyOf(line) === keyOf(one));
  return LAYERS.flatMap((layer) => [
    ...is.filter((line) => line.layer === layer && has(was, line)).map((line) => ({ line, way: 'stays' as const })),
    ...was.filter((line) => line.layer === layer && !has(is, line)).map((line) => ({ line, way: 'goes' as const })),
    ...is.filter((line) => line.layer === layer && !has(was, line)).map((line) => ({ line, way: 'comes' as const })),
  ]);
}

/** What tells a line from every other one of a plan. */
export function keyOf({ layer, says, by, safeguard }: PlanLine): string {
  return `${layer}: ${says}, ${by}, ${safeguard ?? ''}`;
}
