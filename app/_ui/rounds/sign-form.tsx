'use client';

import type { FormAction } from '../form/answer';
import { KeptForm } from '../safeguards/kept-form';
import { NoteField } from './note-field';
import { byTwoSaid } from './second-signature';
import { type RoundView, roundsAddress } from './round-view';
import style from './rounds.module.css';

/** Signs a round, saying first what is not done and what is abnormal. @param blank lines that nobody has entered */
export function SignForm({
  page: { site, round, places, self },
  blank,
  sign,
}: {
  page: RoundView;
  blank: number;
  sign: FormAction<unknown>;
}) {
  const lines = places.flatMap((place) => place.lines);
  const notDone = lines.filter(({ entries }) => entries.at(-1)?.value === null).length;
  const abnormal = lines.filter(({ isAbnormal }) => isAbnormal).length;
  const next = places.find((place) => place.lines.some(({ entries }) => entries.length === 0));
  return (
    <>
      <p>
        Blank: {blank}. Not done: {notDone}. Other than usual: {abnormal}.
      </p>
      {round.byTwo ? <p>{byTwoSaid(round.byTwo)}</p> : null}
      {next ? (
        <p>
          <a className={style.go} href={roundsAddress(site.key, round.id, next.number)}>
            Go to the first place with blank lines: {next.name}
          </a>
        </p>
      ) : (
        <KeptForm
          action={sign}
          hidden={{ site: site.key, round: round.id }}
          button={`Sign this round as ${self}`}
          done="It is signed."
        >
          <NoteField name="note" title="For whoever comes next (may stay empty)" />
        </KeptForm>
      )}
    </>
  );
}
