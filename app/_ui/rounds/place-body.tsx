import type { Custom } from '#core/units/shown';
import Link from '../frame/link';
import type { ReactNode } from 'react';
import type { FormAction } from '../form/answer';
import { Page } from '../frame/page';
import { Fold } from '../frame/fold';
import { siteAddress } from '../frame/site-address';
import { LiveRefresh } from '../live/live-refresh';
import { AddPhoto } from './photo-form';
import type { CalledView } from './call-help';
import { PlaceCautions } from './place-cautions';
import { PlaceHelp } from './place-help';
import { RestForm } from './rest-form';
import { blankOf, type LineView, type PlaceView, type RoundView, roundsAddress } from './round-view';
import style from './rounds.module.css';
import { SheetLine } from './sheet-line';
import { Warnings } from './warnings';

/** What an entry answers: something that is asked first, or null when it is kept. */
export type EnterAction = FormAction<{ asked: string | null }>;

interface PlaceBodyProps {
  page: RoundView;
  place: PlaceView;
  units: Custom;
  enter: EnterAction;
  rest: FormAction<unknown>;
  addPhoto: FormAction<unknown>;
  call: FormAction<CalledView>;
  /** The states of its system, for those who may set them. */
  states: ReactNode;
}

/** One place of a round, as it is walked: line by line, each kept when it is made. */
export function PlaceBody({ page, place, units, enter, rest, addPhoto, call, states }: PlaceBodyProps) {
  const { site, round, places, mayWalk } = page;
  const blank = blankOf(place);
  const isOpen = mayWalk && round.signed === null;
  return (
    <Page
      title={place.name}
      over={[
        { href: siteAddress(site.key), name: site.name },
        { href: roundsAddress(site.key), name: 'Rounds' },
        { href: roundsAddress(site.key, round.id), name: round.name },
      ]}
      lead={
        <p>
          Place {place.number} of {places.length}. {place.lines.length - blank.length} of {place.lines.length} lines
          entered here.
        </p>
      }
    >
      <Warnings page={page} place={place} />
      <PlaceCautions lines={place.lines} />
      <ol className={style.lines}>
        {place.lines.map((line) => (
          <SheetLine
            key={line.check.key}
            page={page}
            line={line}
            units={units}
            enter={enter}
            photo={isOpen ? <LinePhoto page={page} line={line} add={addPhoto} /> : undefined}
            help={mayWalk ? <PlaceHelp page={page} place={place} line={line} call={call} /> : null}
          />
        ))}
      </ol>
      {isOpen && blank.length > 0 ? <RestForm page={page} place={place} rest={rest} /> : null}
      {states}
      {mayWalk ? (
        <Fold title="Something else is wrong here: call for help">
          <PlaceHelp page={page} place={place} call={call} />
        </Fold>
      ) : null}
      <Onward page={page} place={place} />
      {round.signed ? null : <LiveRefresh site={site.key} what={['rounds', 'alarms', 'states']} />}
    </Page>
  );
}

function Onward({ page: { site, round, places }, place }: { page: RoundView; place: PlaceView }) {
  const at = (number: number) => roundsAddress(site.key, round.id, number);
  const [before, after] = [place.number - 1, place.number + 1];
  return (
    <nav aria-label="Places" className={style.onward}>
      {before >= 1 ? (
        <Link className={style.go} href={at(before)}>
          Previous place
        </Link>
      ) : null}
      <Link className={style.go} href={roundsAddress(site.key, round.id)}>
        All places, and sign
      </Link>
      {after <= places.length ? (
        <Link className={style.onwardMain} href={at(after)}>
          Next place
        </Link>
      ) : null}
    </nav>
  );
}

/** A photo of a line: what it asks for, or what may go with what was entered, behind a fold. */
function LinePhoto({
  page: { site, round },
  line,
  add,
}: {
  page: RoundView;
  line: LineView;
  add: FormAction<unknown>;
}) {
  const stands = line.entries.at(-1);
  if (!stands?.value && line.check.kind !== 'photo') return null;
  const form = <AddPhoto site={site.key} round={round.id} line={line} next={line.nextPhoto} add={add} />;
  return stands ? <Fold title="Add a photo">{form}</Fold> : form;
}
