import 'server-only';
import type { Losses } from '#core/incidents/losses';
import type { Mark } from '#core/incidents/marks';
import type { Column } from '#core/plans/credit';
import type { FaultCase } from '#core/review/result';
import { caseTitle } from '#core/review/words';
import { wallClock } from '#core/time/zone';
import { currentReview } from '../reviews/current-review';
import type { IncidentAt } from './find-incident-at';

/** A fault case of the review, held against what happened. */
export interface CaseCompared {
  id: string;
  title: string;
  /** s from the fault to harm by the model, at the hour it began, by column; null: no harm within seven days. */
  modelS: Record<Column, number | null>;
  /** s from the fault to the first loss: at least and at most; null where either is not known. */
  foundS: [number, number] | null;
}

/** The fault cases that an incident can be held against, and the one that was chosen. */
export interface CaseChoice {
  cases: { id: string; title: string }[];
  compared: CaseCompared | null;
}

/** Holds an incident against a fault case of the system's review. @param chosen id of the case; null while none is */
export async function compareCase(
  at: IncidentAt,
  { marks, losses, chosen }: { marks: readonly Mark[]; losses: Losses; chosen: string | null },
): Promise<CaseChoice> {
  const { entry: site, stored, incident } = at;
  const review = incident.system ? await currentReview(site.id, stored, incident.system.key) : null;
  const harming = (review?.cases ?? []).filter(({ claimed, tested }) => harms(claimed) || harms(tested));
  const cases = harming.map((one) => ({ id: one.id, title: caseTitle(one) }));
  const found = review?.cases.find(({ id }) => id === chosen);
  if (!found) return { cases, compared: null };
  const began = marks.find(({ mark }) => mark === 'fault-began');
  const { firstMs } = losses;
  const foundS: [number, number] | null =
    began && firstMs !== null ? [(firstMs - began.latestMs) / 1000, (firstMs - began.atMs) / 1000] : null;
  const hour = hourOfWeek(site.zone, began?.atMs ?? incident.openedAt.getTime());
  const modelS = { claimed: harmS(found, 'claimed', hour), tested: harmS(found, 'tested', hour) };
  return { cases, compared: { id: found.id, title: caseTitle(found), modelS, foundS } };
}

function harms({ outcomes }: FaultCase['claimed']): boolean {
  return outcomes.some(({ harm }) => harm.class === 'animals');
}

function harmS(found: FaultCase, column: Column, hour: number): number | null {
  return found[column].outcomes.find(({ harm }) => harm.class === 'animals')?.harmS[hour] ?? null;
}

const DAY_MS = 86_400_000;

/** Hour of the week at a place, 0 = Monday 00:00. 1970-01-01 was a Thursday, three days after a Monday. */
function hourOfWeek(zone: string, atMs: number): number {
  const { date, time } = wallClock(zone, atMs);
  const day = Math.floor(Date.parse(`${date}T00:00:00Z`) / DAY_MS);
  return ((((day + 3) % 7) + 7) % 7) * 24 + Number(time.slice(0, 2));
}
