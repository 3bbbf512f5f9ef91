import type { Proof } from '#core/states/proofs';
import { proofSaid } from './proof-words';
import style from './states.module.css';

/** What to look at before a state is over. */
export function ProofList({ proofs }: { proofs: readonly Proof[] }) {
  if (proofs.length === 0)
    return (
      <p className={style.small}>
        No plan says what this state switches, so nothing is known of what to prove: look that everything runs.
      </p>
    );
  return (
    <>
      <p className={style.small}>At its end, see that everything runs again:</p>
      <ul className={style.proofs}>
        {proofs.map((proof) => (
          <li key={proof.key}>{proofSaid(proof)}</li>
        ))}
      </ul>
    </>
  );
}
