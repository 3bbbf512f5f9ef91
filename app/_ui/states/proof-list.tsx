import type { Proof } from '#core/states/state-end';
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
          <li key={proofSaid(proof)}>{proofSaid(proof)}</li>
        ))}
      </ul>
    </>
  );
}

function proofSaid(proof: Proof): string {
  switch (proof.kind) {
    case 'watts':
      return proof.range
        ? `${proof.equipment} draws ${proof.range.minW} to ${proof.range.maxW}\u00a0W while it runs`
        : `${proof.equipment} runs: no watts range is known, so see or feel that it does`;
    case 'off':
      return `${proof.equipment} is off again`;
    case 'flow':
      return proof.sensor === null
        ? 'the return flows: no flow sensor, so look at the outlet'
        : `the return flows: “${proof.sensor}” reads as usual`;
    case 'level':
      return proof.sensor === null
        ? 'the level is back at its mark'
        : `the level is back: “${proof.sensor}” reads as usual`;
    case 'shut':
      return `${proof.equipment}: its waste is shut`;
  }
}
