import { type Entry, STRENGTHS } from './incident';
import { newestBy, type Standing, standing } from './story';

/** An action, and what became of it. */
export interface ActionLine {
  entry: Standing<'action'>;
  done: Standing<'action-done'> | null;
  /** Its day is over, and it is not done. */
  isLate: boolean;
}

/** The actions, the soonest due first. @param today ISO date at the site */
export function actionsOf(entries: readonly Entry[], today: string): ActionLine[] {
  const done = newestBy(standing(entries, 'action-done'), ({ body }) => body?.action ?? '');
  const lines = standing(entries, 'action').map((entry) => {
    const by = done.get(entry.id) ?? null;
    return { entry, done: by, isLate: by === null && entry.body.due < today };
  });
  return lines.sort((a, b) => (a.entry.body.due < b.entry.body.due ? -1 : a.entry.body.due > b.entry.body.due ? 1 : 0));
}

/** Whether nothing among the actions does more than tell people to do it better: no device, and nothing taken away. */
export function isOnlyWords(lines: readonly ActionLine[]): boolean {
  const weak = STRENGTHS.indexOf('procedure');
  return lines.length > 0 && lines.every(({ entry }) => STRENGTHS.indexOf(entry.body.strength) >= weak);
}
