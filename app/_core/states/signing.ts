import type { System } from '../facility/system';
import { isOzoneTouched } from './proofs';
import type { Begun } from './state-end';
import table from './signing.json';

/** What is signed by two: whoever did it, and somebody else who looked. Common practice, no source. */
export const SIGNED_BY_TWO = [
  'ozone-return',
  'water-release',
  'medicine-dosing',
  'valve-line-up',
  'safeguard-off',
] as const;
export type SignedByTwo = (typeof SIGNED_BY_TWO)[number];

/** What a second person looks at before signing when a safeguard is off. */
const OFF = {
  title: 'A safeguard is off',
  look: 'That it is off on purpose, who has it in hand, what stands in for it meanwhile, and when it comes back.',
};

/** The kinds of signature that a state asks for. @param at   at its beginning or its end */
export function signaturesAsked(
  { equipment }: Pick<System, 'equipment'>,
  state: Begun,
  at: 'begun' | 'ended',
): SignedByTwo[] {
  const ozone = equipment.some((piece) => isOzoneTouched(piece, state));
  return table
    .filter((one) => one.at === at)
    .filter(({ states, needs }) => (needs === 'ozone' ? ozone : states.includes(state)))
    .map(({ kind }) => kind as SignedByTwo);
}

/** What a kind of signature is about, and what to look at before giving it. */
export function signingWords(kind: SignedByTwo): { title: string; look: string } {
  return table.find((one) => one.kind === kind) ?? OFF;
}
