'use client';

import { Fold } from '../frame/fold';
import { Page } from '../frame/page';
import { siteAddress } from '../frame/site-address';
import { PlaceCautions } from '../rounds/place-cautions';
import { PlaceHelp } from '../rounds/place-help';
import { RestForm } from '../rounds/rest-form';
import { blankOf, type PlaceView } from '../rounds/round-view';
import rounds from '../rounds/rounds.module.css';
import { SheetLine } from '../rounds/sheet-line';
import { Warnings } from '../rounds/warnings';
import { calling } from './calling';
import { makeEntry, makeRest } from './make';
import { TakePhoto } from './take-photo';
import { useDrafts } from './use-drafts';
import style from './walk.module.css';
import type { WalkPage } from './walk-round';

/** A place of a walk, line by line; each entry is kept on this telephone when it is made. */
export function WalkPlace({
  page,
  place,
  on,
  at,
  status,
  units,
  photos,
  meet,
  hasSignal,
}: WalkPage & { place: PlaceView }) {
  const { places, round } = page;
  const drafts = useDrafts(on);
  const blank = blankOf(place);
  const isOpen = round.signed === null;
  const call = calling(on, meet);
  return (
    <Page
      title={place.name}
      lead={
        <p>
          {round.name}. Place {place.number} of {places.length}. {place.lines.length - blank.length} of{' '}
          {place.lines.length} lines entered here.
        </p>
      }
    >
      {status}
      <Warnings page={page} place={place} />
      <PlaceCautions lines={place.lines} />
      <ol className={rounds.lines}>
        {(drafts === null ? [] : place.lines).map((line) => (
          <SheetLine
            key={line.check.key}
            page={page}
            line={line}
            units={units}
            enter={async (_before, form) => await makeEntry(on, line, form)}
            drafts={drafts ?? undefined}
            help={
              <PlaceHelp
                page={page}
                place={place}
                line={line}
                call={call}
                drafting={drafts?.(`${line.check.key} call`)}
              />
            }
            photo={isOpen ? <TakePhoto on={on} line={line} photos={photos} /> : null}
          />
        ))}
      </ol>
      {isOpen && blank.length > 0 ? (
        <RestForm page={page} place={place} rest={async (_before, form) => await makeRest(on, place, form)} />
      ) : null}
      <SetState site={page.site.key} system={place.system} hasSignal={hasSignal} />
      <Fold title="Something else is wrong here: call for help">
        {drafts === null ? null : (
          <PlaceHelp page={page} place={place} call={call} drafting={drafts(`${place.number} call`)} />
        )}
      </Fold>
      <nav aria-label="Places" className={rounds.onward}>
        {place.number > 1 ? (
          <a className={style.go} href={at(place.number - 1)}>
            Previous place
          </a>
        ) : null}
        <a className={style.go} href={at()}>
          All places, and sign
        </a>
        {place.number < places.length ? (
          <a className={rounds.onwardMain} href={at(place.number + 1)}>
            Next place
          </a>
        ) : null}
      </nav>
    </Page>
  );
}

/** A state has to be known at once by whoever reads alarms and plans: it is set where there is a signal. */
function SetState({ site, system, hasSignal }: { site: string; system: PlaceView['system']; hasSignal: boolean }) {
  if (system === null) return null;
  return (
    <p>
      {hasSignal ? (
        <a className={style.go} href={siteAddress(site, 'states', system.key)}>
          Begin or end a state of {system.name} (what you have typed here stays)
        </a>
      ) : (
        `To begin or end a state of ${system.name} there has to be a signal: a state has to be known at once.`
      )}
    </p>
  );
}
