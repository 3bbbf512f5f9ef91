import type { Facility } from '../facility/facility';
import { type Cover, staffed } from '../rota/cover';
import { weekSecond } from '../time/week';
import { remedyText } from './remedies';
import type { Finding, FindingLine } from './result';

/** Rounds that fall on hours with nobody on site: the review counts on none of them. Null when there are none. */
export function unwalkedRounds(facility: Facility, cover: Cover): Finding | null {
  const lines = facility.rounds.flatMap(({ name, days, at }): FindingLine[] => {
    const missed = days.filter((day) => !staffed(cover, weekSecond(day, at)));
    if (missed.length === 0) return [];
    return [
      {
        from: { rule: 'staff-round' },
        cause: `${name}, ${at}`,
        consequence: 'Nobody is on site to walk it, so it is not counted on.',
        figures: [{ name: 'days', value: missed.join(', ') }],
        source: 'the rota and the rounds as entered',
      },
    ];
  });
  if (lines.length === 0) return null;
  const title = 'Rounds with nobody on site to walk them';
  return { id: 'do:staff-round', grade: 'low', remedy: remedyText('staff-round'), title, lines };
}
