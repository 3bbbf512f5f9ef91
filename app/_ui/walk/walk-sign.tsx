'use client';

import { NoteField } from '../rounds/note-field';
import { blankOf, roundsAddress } from '../rounds/round-view';
import { byTwoSaid } from '../rounds/second-signature';
import { KeptForm } from '../safeguards/kept-form';
import { makeSignature, type On } from './make';
import style from './walk.module.css';
import type { WalkPage } from './walk-round';

type WalkSignProps = Pick<WalkPage, 'page' | 'on' | 'at' | 'signing'>;

/** Signs a walk on this telephone: first, by whoever walked it; or second, where somebody else has and two are asked for. */
export function WalkSign(props: WalkSignProps) {
  const { page, on, signing } = props;
  const { round, isSigner, self } = page;
  if (round.signed === null) return <First {...props} />;
  if (round.byTwo === null || round.second)
    return <p>It is signed. What is found later is entered as a correction, where the round is.</p>;
  return (
    <>
      <p>{byTwoSaid(round.byTwo)}</p>
      {isSigner ? (
        <p>You have signed it. It waits for somebody else.</p>
      ) : (
        <>
          {signing?.hasRole === false ? (
            <p>You have not that role: it is taken if whoever signed first has it.</p>
          ) : null}
          <Form on={on} button={`I have looked: sign as the second, ${self}`} title="What you saw (may stay empty)" />
        </>
      )}
    </>
  );
}

function First({ page, on, at, signing }: WalkSignProps) {
  const { places, round, self, site } = page;
  const lines = places.flatMap((place) => place.lines);
  const notDone = lines.filter(({ entries }) => entries.at(-1)?.value === null).length;
  const other = lines.filter(({ isAbnormal }) => isAbnormal).length;
  const next = places.find((place) => blankOf(place).length > 0);
  return (
    <>
      <p>
        Blank: {places.flatMap(blankOf).length}. Not done: {notDone}. Other than usual: {other}.
      </p>
      {round.byTwo ? <p>{byTwoSaid(round.byTwo)}</p> : null}
      {next ? (
        <p>
          <a className={style.go} href={at(next.number)}>
            Go to the first place with blank lines: {next.name}
          </a>
        </p>
      ) : round.byTwo === null && signing?.hasRole === false ? (
        <p>
          Its sheet asks for the signature of a {signing.by}, or above: they sign it{' '}
          <a className={style.go} href={roundsAddress(site.key, round.id)}>
            where the round is
          </a>
          , once what you entered is sent.
        </p>
      ) : (
        <Form on={on} button={`Sign this round as ${self}`} title="For whoever comes next (may stay empty)" />
      )}
    </>
  );
}

function Form({ on, button, title }: { on: On; button: string; title: string }) {
  return (
    <KeptForm
      action={async (_before, form) => await makeSignature(on, form)}
      hidden={{}}
      button={button}
      done="It is signed."
    >
      <NoteField name="note" title={title} />
    </KeptForm>
  );
}
