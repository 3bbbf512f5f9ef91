import type { Instant } from '../time/zone';
import type { Bodies, Entry } from './incident';
import { standing } from './story';

/** Days that animals are looked after before a loss no longer counts as late. Common practice, no source. */
const FOLLOWED_DAYS = 14;
const DAY_MS = 86_400_000;

type Counts = Pick<Bodies['loss'], 'dead' | 'putDown' | 'affected' | 'missing'>;

/** What was lost of one species group. `late`: of the dead and put down, those of more than a day after it was put right. */
export interface GroupLoss extends Counts {
  group: string;
  late: number;
}

/** All that was lost. */
export interface Losses {
  groups: GroupLoss[];
  total: Counts;
  /** Litres. */
  waterL: number;
  /** The first loss of animals; null when there was none. */
  firstMs: Instant | null;
  /** Until when animals are followed. */
  followedUntilMs: Instant;
}

/**
 * Adds up what was lost, by group in the order of their names.
 *
 * @param overMs   when it was put right or over, as far as known; when it began, or was opened, as long as it is not
 */
export function lossesOf(entries: readonly Entry[], overMs: Instant): Losses {
  const groups = new Map<string, GroupLoss>();
  let waterL = 0;
  let firstMs: Instant | null = null;
  for (const { body, atMs } of standing(entries, 'loss')) {
    waterL += body.waterL;
    const gone = body.dead + body.putDown + body.missing;
    if (gone > 0) firstMs ??= atMs;
    if (gone + body.affected === 0) continue;
    const had = groups.get(body.group) ?? { group: body.group, dead: 0, putDown: 0, affected: 0, missing: 0, late: 0 };
    const late = atMs - overMs > DAY_MS ? body.dead + body.putDown : 0;
    groups.set(body.group, { ...added(had, body), group: body.group, late: had.late + late });
  }
  const all = [...groups.values()].sort((a, b) => (a.group < b.group ? -1 : 1));
  const total = all.reduce<Counts>((sum, one) => added(sum, one), { dead: 0, putDown: 0, affected: 0, missing: 0 });
  return { groups: all, total, waterL, firstMs, followedUntilMs: overMs + FOLLOWED_DAYS * DAY_MS };
}

function added(a: Counts, b: Counts): Counts {
  return {
    dead: a.dead + b.dead,
    putDown: a.putDown + b.putDown,
    affected: a.affected + b.affected,
    missing: a.missing + b.missing,
  };
}
