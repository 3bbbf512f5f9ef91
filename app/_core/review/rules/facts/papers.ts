import type { PaperKind } from '../../../facility/paper';
import { daysBetween } from '../../../time/days';
import { UNCARRIED } from '../../../faults/catalogue';
import type { Uncarried } from '../../../faults/fault';
import type { RuleContext } from '../rule';
import table from './papers.json';

/** What a kind of paper has to say, what follows without it, and for how many days it counts. Common practice, no source. */
export const PAPERS: Readonly<Record<PaperKind, { asks: string; without: string; days: number }>> = table;

/** A kind of paper that a system needs, with the hazards behind it and the newest one there is. */
export interface NeededPaper {
  kind: PaperKind;
  hazards: Uncarried[];
  /** ISO date of the newest; null without any. */
  on: string | null;
  isValid: boolean;
}

/** Every paper that a system needs, as it stands on the day of the review. */
export function neededPapers({ facility, system, on: today }: RuleContext): NeededPaper[] {
  const byKind = new Map<PaperKind, Uncarried[]>();
  for (const mode of UNCARRIED) {
    if (!mode.asks || !('paper' in mode.asks) || !mode.concerns(facility, system)) continue;
    byKind.set(mode.asks.paper, [...(byKind.get(mode.asks.paper) ?? []), mode]);
  }
  return [...byKind].map(([kind, hazards]) => {
    const dates = (system.papers ?? []).filter((paper) => paper.kind === kind && paper.on <= today).map(({ on }) => on);
    const on = dates.sort().at(-1) ?? null;
    return { kind, hazards, on, isValid: on !== null && daysBetween(on, today) <= PAPERS[kind].days };
  });
}
