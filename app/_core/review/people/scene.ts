import { taker } from '../../equipment/take';
import type { Facility } from '../../facility/facility';
import type { AnsweredBy } from '../../facility/site';
import type { Answering } from '../../rota/answering';
import { coverOf } from '../../rota/cover';
import { asking, type Line, usualLine } from '../../rota/line';
import { type Look, usualLooks } from './looks';

/** Who can come to a system, and who looks at it, over the hours of a week. */
export interface Scene {
  line: Line;
  looks: Look[];
  /** Who comes first of those who answer. */
  comes: (answeredBy: AnsweredBy) => Answering;
}

/** The usual week of a site, system by system: who comes is worked out once for all of them. */
export function usualScenes(facility: Facility): (system: string) => Scene {
  const line = usualLine(coverOf(facility, taker('nominal')));
  return scenesOn(line, (system) => usualLooks(facility, system, line.stretches));
}

/** Scenes on one line of duties. @param looksOf the rounds that pass a system */
export function scenesOn(line: Line, looksOf: (system: string) => Look[]): (system: string) => Scene {
  const comes = asking(line);
  return (system) => ({ line, looks: looksOf(system), comes });
}
