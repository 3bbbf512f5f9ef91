import { taker } from '../../equipment/take';
import type { Facility } from '../../facility/facility';
import type { AnsweredBy } from '../../facility/site';
import type { EquipmentType } from '../../facility/system';
import { ableTo } from '../../rota/able';
import type { Answering } from '../../rota/answering';
import { type Able, coverOf } from '../../rota/cover';
import { asking, type Line, usualLine } from '../../rota/line';
import { type Look, usualLooks } from './looks';

/** People who can put something right: who they are, and who comes first of those who answer. */
interface Hands {
  /** Null: everybody. */
  able: Able | null;
  comes: (answeredBy: AnsweredBy) => Answering;
}

/** Who can come to a system, and who looks at it, over the hours of a week. */
export interface Scene {
  line: Line;
  looks: Look[];
  /** Those who may put a type of equipment right; null: whoever is there. */
  hands: (type: EquipmentType | null) => Hands;
}

/** The usual week of a site, system by system: who comes is worked out once for all of them. @param on day on which competences count */
export function usualScenes(facility: Facility, on: string): (system: string) => Scene {
  const line = usualLine(coverOf(facility, taker('nominal')));
  return scenesOn(facility, on, line, (system) => usualLooks(facility, system, line.stretches));
}

/** Scenes on one line of duties. @param looksOf the rounds that pass a system */
export function scenesOn(
  facility: Facility,
  on: string,
  line: Line,
  looksOf: (system: string) => Look[],
): (system: string) => Scene {
  const everybody: Hands = { able: null, comes: asking(line) };
  const known = new Map<EquipmentType | null, Hands>([[null, everybody]]);
  const hands = (type: EquipmentType | null): Hands => {
    const found = known.get(type);
    if (found) return found;
    const able = ableTo(facility, type, on);
    const made = able ? { able, comes: asking(line, able) } : everybody;
    known.set(type, made);
    return made;
  };
  return (system) => ({ line, looks: looksOf(system), hands });
}
