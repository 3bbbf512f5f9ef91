import { taker } from '#core/equipment/take';
import type { Facility } from '#core/facility/facility';
import { coverOf } from '#core/rota/cover';
import { walksOf } from '#core/rounds/walks';
import { HOUR, WEEK } from '#core/time/week';

/** A stretch of the week in hours since Monday 00:00. */
export type Stretch = [number, number];

/** Who is there through the week: what a cover chart shows beneath its curve. */
export interface RotaLanes {
  onSite: Stretch[];
  onCall: Stretch[];
  /** Hours since Monday 00:00 at which a round passes this system. */
  rounds: number[];
}

/** The rota and the rounds of a system, cut at the ends of the week. */
export function rotaLanes(facility: Facility, system: string): RotaLanes {
  const cover = coverOf(facility, taker('nominal'));
  const stretches = (kind: 'on-site' | 'on-call') =>
    merged(cover.duties.filter((d) => d.kind === kind).flatMap((d) => cut(d.fromS, d.fromS + d.lengthS)));
  return {
    onSite: stretches('on-site'),
    onCall: stretches('on-call'),
    rounds: walksOf(facility, system, cover).map((w) => w.atS / HOUR),
  };
}

function cut(fromS: number, toS: number): Stretch[] {
  const whole: Stretch = [fromS / HOUR, Math.min(toS, WEEK) / HOUR];
  return toS > WEEK ? [whole, [0, (toS - WEEK) / HOUR]] : [whole];
}

function merged(stretches: Stretch[]): Stretch[] {
  const result: Stretch[] = [];
  for (const [from, to] of stretches.sort((a, b) => a[0] - b[0])) {
    const last = result[result.length - 1];
    if (last && from <= last[1]) last[1] = Math.max(last[1], to);
    else result.push([from, to]);
  }
  return result;
}
