import type { Proof } from './proofs';
import type { Proved } from './proved';

/** What whoever ends a state says of one proof. */
export interface SaidOfProof {
  /** They saw it themselves. */
  seen: boolean;
  /** Why the state ends though it is not so; empty when they do not say that. */
  despite: string;
}

/** How one proof stands in the record. */
export interface ProofKept {
  key: string;
  /** Shown by a reading, seen by whoever ended it, or ended despite it. */
  how: 'reading' | 'seen' | 'despite';
  /** The reading, where one says something. */
  value?: number;
  /** Why it ended despite it. */
  why?: string;
}

/** What is missing before a state may end. */
export interface Missing {
  key: string;
  message: string;
}

/**
 * What is kept of the proofs of a state that ends, or what is missing. What a reading shows needs nobody. What none shows, somebody
 * has to have seen. Against what contradicts, no word of having seen it counts: the state ends despite it, with the reason, or
 * not yet.
 */
export function answerProofs(
  proofs: readonly { proof: Proof; proved: Proved }[],
  said: ReadonlyMap<string, SaidOfProof>,
): { kept: ProofKept[]; missing: Missing[] } {
  const kept: ProofKept[] = [];
  const missing: Missing[] = [];
  for (const { proof, proved } of proofs) {
    const { key } = proof;
    const { seen = false, despite = '' } = said.get(key) ?? {};
    const value = proved.by === null ? {} : { value: proved.by.value };
    if (despite !== '') kept.push({ key, how: 'despite', ...value, why: despite });
    else if (proved.says === 'shown') kept.push({ key, how: 'reading', ...value });
    else if (proved.says === 'contradicted')
      missing.push({
        key,
        message: 'is contradicted by what its sensor reads: put it right, or say why the state ends all the same',
      });
    else if (seen) kept.push({ key, how: 'seen', ...value });
    else missing.push({ key, message: 'must be seen: no reading shows it' });
  }
  return { kept, missing };
}
