'use client';

import { useId } from 'react';
import type { Custom } from '#core/units/shown';
import { type ProofView, proofSaid, readingSaid } from './proof-words';
import style from './states.module.css';

interface Props {
  proofs: readonly ProofView[];
  units: Custom;
  zone: string;
}

/** What is answered for each proof at the end of a state: what a reading shows needs nobody, the rest is seen, or said to be not so. */
export function ProofFields({ proofs, units, zone }: Props) {
  if (proofs.length === 0)
    return (
      <p className={style.small}>
        No plan says what this state switches, so nothing is known of what to prove: look that everything runs.
      </p>
    );
  return (
    <fieldset className={style.answers}>
      <legend>Everything runs again</legend>
      {proofs.map((one) => (
        <Answer key={one.proof.key} one={one} said={readingSaid(one.proved, units, zone)} />
      ))}
    </fieldset>
  );
}

function Answer({ one: { proof, proved }, said }: { one: ProofView; said: string | null }) {
  const id = useId();
  return (
    <div className={style.answer}>
      {proved.says === 'nothing' ? (
        <label htmlFor={id} className={style.seen}>
          <input id={id} type="checkbox" name={`seen:${proof.key}`} value="yes" />
          <span>
            I saw it: {proofSaid(proof)}
            {said ? <span className={style.small}> ({said}, which alone does not tell)</span> : null}
          </span>
        </label>
      ) : (
        <p>
          {proved.says === 'shown' ? (
            'Shown'
          ) : (
            <strong>
              <span aria-hidden="true" className={style.mark}>
                ▲
              </span>{' '}
              Not so
            </strong>
          )}
          : {proofSaid(proof)}. <span className={style.small}>{said}.</span>
        </p>
      )}
      {proved.says === 'shown' ? null : <Despite proofKey={proof.key} isNeeded={proved.says === 'contradicted'} />}
    </div>
  );
}

/** Why a state ends though something is not so. */
function Despite({ proofKey, isNeeded }: { proofKey: string; isNeeded: boolean }) {
  const id = useId();
  const field = (
    <label htmlFor={id}>
      Not so, and the state ends all the same, because
      <input id={id} name={`despite:${proofKey}`} maxLength={500} />
    </label>
  );
  if (isNeeded) return field;
  return (
    <details>
      <summary>It is not so</summary>
      {field}
    </details>
  );
}
