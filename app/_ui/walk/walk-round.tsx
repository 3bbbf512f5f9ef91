'use client';

import type { Custom } from '#core/units/shown';
import type { ReactNode } from 'react';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { NoteField } from '../rounds/note-field';
import { blankOf, type RoundView } from '../rounds/round-view';
import { KeptForm } from '../safeguards/kept-form';
import { Ledger } from '../table/ledger';
import { momentSaid } from '../words/moment';
import { makeSignature, type On } from './make';
import type { Photo } from './store';
import style from './walk.module.css';
import { hashOf } from './where';

/** What every page of a walk is given. */
export interface WalkPage {
  page: RoundView;
  on: On;
  /** The address of a place of the walk, or of the walk itself. */
  at: (place?: number) => string;
  /** What is kept here and not sent yet. */
  status: ReactNode;
  units: Custom;
  /** Photos that are kept here and not sent yet. */
  photos: readonly Photo[];
  /** Whether Holdfast answered when it was last asked. */
  hasSignal: boolean;
  /** Sends what waits, and fetches what is new. */
  meet: () => Promise<void>;
}

/** A walk: its places in the order of walking, and its signature. */
export function WalkRound({ page, on, at, status }: WalkPage) {
  const { round, places, site } = page;
  return (
    <Page title={round.name} lead={<p>{leadSaid(page)}</p>}>
      {status}
      <p>
        <a className={style.go} href={hashOf({ at: 'site', site: site.key })}>
          All rounds that are kept here
        </a>
      </p>
      <Section
        id="places"
        title="Places"
        note="Clean before dirty: hands, nets and water carry disease from one to the next."
      >
        <Ledger
          caption={`${places.length} places, in the order of walking.`}
          columns={[
            {
              id: 'place',
              head: 'Place',
              cell: ({ number, name }) => (
                <a className={style.go} href={at(number)}>
                  {number}. {name}
                </a>
              ),
            },
            {
              id: 'entered',
              head: 'Entered',
              cell: (place) => `${place.lines.length - blankOf(place).length} of ${place.lines.length}`,
            },
          ]}
          rows={places}
          keyOf={({ number }) => String(number)}
        />
      </Section>
      <Section id="sign" title="Sign" note="Blank is not as usual: each line has an entry, or why it has none.">
        <Sign page={page} on={on} at={at} />
      </Section>
    </Page>
  );
}

function leadSaid({ round, site, self }: RoundView): string {
  const due = round.isBesides ? 'Walked besides the timetable.' : `Due ${momentSaid(round.dueAt, site.zone)}.`;
  return `${due} You walk as ${self}.${round.signed ? ` Signed here at ${momentSaid(round.signed.at, site.zone)}.` : ''}`;
}

function Sign({ page, on, at }: Pick<WalkPage, 'page' | 'on' | 'at'>) {
  const { places, round, self } = page;
  if (round.signed) return <p>It is signed. What is found later is entered as a correction, where the round is.</p>;
  const lines = places.flatMap((place) => place.lines);
  const notDone = lines.filter(({ entries }) => entries.at(-1)?.value === null).length;
  const other = lines.filter(({ isAbnormal }) => isAbnormal).length;
  const next = places.find((place) => blankOf(place).length > 0);
  return (
    <>
      <p>
        Blank: {places.flatMap(blankOf).length}. Not done: {notDone}. Other than usual: {other}.
      </p>
      {next ? (
        <p>
          <a className={style.go} href={at(next.number)}>
            Go to the first place with blank lines: {next.name}
          </a>
        </p>
      ) : (
        <KeptForm
          action={async (_before, form) => await makeSignature(on, form)}
          hidden={{}}
          button={`Sign this round as ${self}`}
          done="It is signed."
        >
          <NoteField name="note" title="For whoever comes next (may stay empty)" />
        </KeptForm>
      )}
    </>
  );
}
