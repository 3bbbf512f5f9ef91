import 'server-only';
import { changeState, mayCome } from '#core/rota/change';
import type { KeptChange } from '#data/rota/changes';

/** How many of some leave and swaps wait for an answer. */
export function countOpen(changes: readonly KeptChange[]): number {
  return changes.filter(({ kind, events }) =>
    mayCome(kind, changeState(events.map((event) => event.kind))).includes('withdrawn'),
  ).length;
}
