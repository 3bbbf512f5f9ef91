import type { Facility } from '#core/facility/facility';
import type { WeakStretch } from '#core/review/people/weakest';
import { HOURS_OF_WEEK } from '#core/time/week';
import type { Stretch } from '../case/rota-lanes';

/** Who would come through a stretch of the week: hours since Monday 00:00. */
export interface ComesStretch {
  span: Stretch;
  name: string;
}

/** Who would come to the weakest fault case through the week, cut at its ends; neighbours of one name are one. */
export function comesThrough(stretches: readonly WeakStretch[], { people }: Pick<Facility, 'people'>): ComesStretch[] {
  const name = (key: string) => people.find((one) => one.key === key)?.name ?? key;
  const cut = stretches.flatMap(({ from, hours, way }): ComesStretch[] => {
    const keys = way ? (way.come ? [way.come.person] : way.walkers) : [];
    const said = keys.length > 0 ? keys.map(name).join(' or ') : 'nobody';
    const to = from + hours;
    const first: ComesStretch = { span: [from, Math.min(to, HOURS_OF_WEEK)], name: said };
    return to > HOURS_OF_WEEK ? [first, { span: [0, to - HOURS_OF_WEEK], name: said }] : [first];
  });
  const joined: ComesStretch[] = [];
  for (const one of cut.sort((a, b) => a.span[0] - b.span[0])) {
    const last = joined.at(-1);
    if (last && last.name === one.name && last.span[1] === one.span[0]) last.span = [last.span[0], one.span[1]];
    else joined.push(one);
  }
  return joined;
}
