/**
 * What this room knows: what can hurt people in the work that Holdfast speaks of, and where it is said.
 * What it leaves out: what local codes, licensed people, vets and makers say, which come first.
 * Where the numbers come from: each caution names its source; most are common practice.
 */
import type { EquipmentType, StateName, SystemKind } from '../facility/system';
import table from './cautions.json';
import product from './product.json';

/** What somebody is doing when a caution is shown to them. */
export type Doing = 'review' | 'finding' | 'case' | 'state' | 'round' | 'alarm';

/** Where cautions are asked for. What is left out is not known there. */
export interface Place {
  doing: Doing;
  /** Types of the equipment that is worked on. */
  equipment?: readonly EquipmentType[];
  /** Remedies that are asked for. */
  remedies?: readonly string[];
  faults?: readonly string[];
  states?: readonly StateName[];
  kinds?: readonly SystemKind[];
  /** Water may be on the floor. */
  floor?: boolean;
}

/** One standing caution. */
export interface Caution {
  key: string;
  hazard: string;
  says: string;
  /** Figures of limits and devices, with how far they are known. */
  figures?: string;
  source: string;
  /** Where it is said: at any of these places, of which everything given must fit. */
  at: readonly Spot[];
}

interface Spot {
  doing: readonly string[];
  equipment?: readonly string[];
  remedies?: readonly string[];
  faults?: readonly string[];
  states?: readonly string[];
  kinds?: readonly string[];
  floor?: boolean;
}

/** Every standing caution. */
export const CAUTIONS: readonly Caution[] = table;

/** What is said of Holdfast itself beside every review. */
export const OF_HOLDFAST: readonly string[] = product;

/** The cautions that belong to a place, in the order of the table. */
export function cautionsFor(place: Place): Caution[] {
  return CAUTIONS.filter(({ at }) => at.some((spot) => fits(spot, place)));
}

function fits(spot: Spot, place: Place): boolean {
  return (
    spot.doing.includes(place.doing) &&
    meets(spot.equipment, place.equipment) &&
    meets(spot.remedies, place.remedies) &&
    meets(spot.faults, place.faults) &&
    meets(spot.states, place.states) &&
    meets(spot.kinds, place.kinds) &&
    (spot.floor === undefined || spot.floor === place.floor)
  );
}

/** Whether nothing is asked for, or something of it is there. */
function meets(asked: readonly string[] | undefined, there: readonly string[] | undefined): boolean {
  return asked === undefined || (there?.some((one) => asked.includes(one)) ?? false);
}

/** A caution with its figures, as one text. */
export function cautionText({ says, figures }: Pick<Caution, 'says' | 'figures'>): string {
  return figures === undefined ? says : `${says} Figures: ${figures}.`;
}
