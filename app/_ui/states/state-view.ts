import type { Proof } from '#core/states/proofs';
import type { Begun } from '#core/states/state-end';
import { capital } from '../words/capital';
import type { ProofView } from './proof-words';

/** A state a system is in. Instants are UTC, ISO. */
export interface StateLineView {
  run: string;
  system: { key: string; name: string };
  state: Begun;
  begunAt: string;
  begunBy: string;
  note: string | null;
  until: string;
  endsItself: boolean;
  outstayed: boolean;
  isOver: boolean;
  hasHandsIn: boolean;
  putOff: { at: string; by: string; until: string; note: string | null }[];
  proofs: ProofView[];
  equipment: string[];
  authority: { until: string; isOver: boolean } | null;
  entries: { putOff: string; end: string; authorise: string };
}

/** A state that can be begun. */
export interface StateChoiceView {
  state: Begun;
  isDescribed: boolean;
  lastsMin: number;
  endsItself: boolean;
  hasHandsIn: boolean;
  proofs: Proof[];
  entry: string;
  stopsAir: boolean;
}

/** The site of a page of states. */
export interface SiteOfStates {
  key: string;
  name: string;
  zone: string;
}

/** A state as it heads a line: "Water change". */
export function stateName(state: Begun): string {
  return capital(state.replaceAll('-', ' '));
}

/** A number of minutes in the largest unit that it is a whole number of. */
export function inUnit(minutes: number): { lasts: number; unit: 'minutes' | 'hours' | 'days' } {
  if (minutes >= 2880 && minutes % 1440 === 0) return { lasts: minutes / 1440, unit: 'days' };
  if (minutes >= 120 && minutes % 60 === 0) return { lasts: minutes / 60, unit: 'hours' };
  return { lasts: minutes, unit: 'minutes' };
}

/** The same in words: "15 minutes", "1 minute". */
export function lastingSaid(minutes: number): string {
  const { lasts, unit } = inUnit(minutes);
  return `${lasts} ${lasts === 1 ? unit.slice(0, -1) : unit}`;
}
