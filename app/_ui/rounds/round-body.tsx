import type { Custom } from '#core/units/shown';
import Link from '../frame/link';
import type { FormAction } from '../form/answer';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { LiveRefresh } from '../live/live-refresh';
import { Ledger } from '../table/ledger';
import { blankOf, type PlaceView, type RoundView, roundsAddress } from './round-view';
import style from './rounds.module.css';
import { momentSaid } from '../words/moment';
import { SecondLook } from './second-look';
import { SecondSignature } from './second-signature';
import { SignForm } from './sign-form';
import { WholeSheet } from './whole-sheet';

interface RoundBodyProps {
  page: RoundView;
  units: Custom;
  sign: FormAction<unknown>;
  look: FormAction<unknown>;
  takeBack: FormAction<unknown>;
}

/** A round: its places, whether it is signed, what stands on its sheet. */
export function RoundBody({ page, units, sign, look, takeBack }: RoundBodyProps) {
  const { site, round, places, mayWalk } = page;
  const blank = places.flatMap(blankOf).length;
  return (
    <Page
      title={round.name}
      over={[
        { href: '/', name: 'Systems' },
        { href: siteAddress(site.key), name: site.name },
        { href: roundsAddress(site.key), name: 'Rounds' },
      ]}
      lead={<Lead page={page} />}
    >
      {mayWalk ? <SecondSignature page={page} sign={sign} /> : null}
      {round.signed ? (
        <SecondLook page={page} units={units} look={look} takeBack={takeBack} />
      ) : mayWalk ? (
        <Section id="sign" title="Sign" note="Blank is not as usual: each line has an entry, or why it has none.">
          <SignForm page={page} blank={blank} sign={sign} />
        </Section>
      ) : null}
      <Section
        id="places"
        title="Places"
        note="Clean before dirty: hands, nets and water carry disease from one to the next."
      >
        <Ledger
          caption={places.length === 1 ? 'One place.' : `${places.length} places, in the order of walking.`}
          columns={[
            { id: 'place', head: 'Place', cell: (place) => <PlaceLink page={page} place={place} /> },
            { id: 'entered', head: 'Entered', cell: (place) => <Entered place={place} /> },
          ]}
          rows={places}
          keyOf={({ number }) => String(number)}
        />
      </Section>
      <Section id="sheet" title="The sheet" wide>
        <WholeSheet page={page} units={units} />
      </Section>
      {round.signed ? null : <LiveRefresh site={site.key} what={['rounds']} />}
    </Page>
  );
}

function Lead({ page: { site, round } }: { page: RoundView }) {
  const said = (at: string) => momentSaid(at, site.zone);
  return (
    <>
      <p>
        {round.isBesides ? 'Walked besides the timetable.' : `Due ${said(round.dueAt)}.`} Begun by {round.begun.by} at{' '}
        {said(round.begun.at)}.{' '}
        {round.signed ? `Signed by ${round.signed.by} at ${said(round.signed.at)}.` : 'Not signed yet.'}
        {round.second ? ` Signed as the second by ${round.second.by} at ${said(round.second.at)}.` : null}
        {round.secondLook ? ` Second look by ${round.secondLook.by} at ${said(round.secondLook.at)}.` : null}
      </p>
      {round.signed?.note ? <p>{round.signed.note}</p> : null}
      {round.second?.note ? <p>With the second signature: {round.second.note}</p> : null}
      {round.secondLook?.note ? <p>At the second look: {round.secondLook.note}</p> : null}
      <p className={style.about}>
        What is entered here is a statement of a person: it proves of no safeguard that it works unless it was tested.
        Times are those of the site ({site.zone}).
      </p>
    </>
  );
}

function PlaceLink({ page: { site, round }, place }: { page: RoundView; place: PlaceView }) {
  return (
    <Link className={style.place} href={roundsAddress(site.key, round.id, place.number)}>
      {place.number}. {place.name}
    </Link>
  );
}

function Entered({ place }: { place: PlaceView }) {
  const blank = blankOf(place).length;
  const other = place.lines.filter(({ isAbnormal }) => isAbnormal).length;
  return (
    <>
      {blank === 0 ? 'all' : `${place.lines.length - blank} of ${place.lines.length}`}
      {other === 0 ? null : (
        <>
          {', '}
          <span aria-hidden="true" className={style.wrong}>
            ▲
          </span>{' '}
          {other} other than usual
        </>
      )}
    </>
  );
}
