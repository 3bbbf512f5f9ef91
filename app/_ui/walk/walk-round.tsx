'use client';

import type { PackedWalk } from '#core/rounds/pack';
import type { Custom } from '#core/units/shown';
import type { ReactNode } from 'react';
import { Fold } from '../frame/fold';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { CallHelp } from '../rounds/call-help';
import { blankOf, type RoundView } from '../rounds/round-view';
import { Ledger } from '../table/ledger';
import { momentSaid } from '../words/moment';
import { calling } from './calling';
import type { On } from './make';
import type { Photo } from './store';
import style from './walk.module.css';
import { WalkSign } from './walk-sign';
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
  /** What is asked of its signatures, where it is more than one by whoever walked it. */
  signing: PackedWalk['signing'];
  /** Photos that are kept here and not sent yet. */
  photos: readonly Photo[];
  /** Whether Holdfast may be reached: it answered when it was last asked, or is being asked. */
  hasSignal: boolean;
  /** Sends what waits, and fetches what is new. */
  meet: () => Promise<void>;
}

/** A walk: its places in the order of walking, and its signature. */
export function WalkRound({ page, on, at, status, signing, meet }: WalkPage) {
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
          caption={places.length === 1 ? 'One place.' : `${places.length} places, in the order of walking.`}
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
        <WalkSign page={page} on={on} at={at} signing={signing} />
      </Section>
      <Help page={page} on={on} meet={meet} />
    </Page>
  );
}

function Help({ page: { site, systems, nextCall }, on, meet }: Pick<WalkPage, 'page' | 'on' | 'meet'>) {
  return (
    <Fold title="Something is wrong: call for help">
      <CallHelp site={site.key} systems={systems} system={null} nextCall={nextCall} call={calling(on, meet)} />
    </Fold>
  );
}

function leadSaid({ round, site, self }: RoundView): string {
  const due = round.isBesides ? 'Walked besides the timetable.' : `Due ${momentSaid(round.dueAt, site.zone)}.`;
  return `${due} You walk as ${self}.${round.signed ? ` Signed by ${round.signed.by} at ${momentSaid(round.signed.at, site.zone)}.` : ''}`;
}
