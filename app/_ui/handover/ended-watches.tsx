import type { FormAction } from '../form/answer';
import { Fold } from '../frame/fold';
import { Takeable } from '../rounds/take-back';
import { momentSaid } from '../words/moment';
import type { EndedWatchView, SiteOfHandover } from './handover-view';

interface EndedProps {
  site: SiteOfHandover;
  ended: readonly EndedWatchView[];
  takeBack: FormAction<unknown>;
}

/** Watches of animals that were ended in the past week, each of which can be taken back. */
export function EndedWatches({ site, ended, takeBack }: EndedProps) {
  if (ended.length === 0) return null;
  return (
    <Fold title={`Ended in the past week: ${ended.length}`}>
      {ended.map((one) => (
        <Ended key={one.id} site={site} one={one} takeBack={takeBack} />
      ))}
    </Fold>
  );
}

function Ended({
  site,
  one: { id, what, at, by, note, taken },
  takeBack,
}: Omit<EndedProps, 'ended'> & { one: EndedWatchView }) {
  const said = `The watch of ${what} was ended by ${by} ${momentSaid(at, site.zone)}: ${note}`;
  const done = 'It is taken back, and they are under watch again.';
  return <Takeable {...{ site, said, taken, takeBack, done }} what="animal-watch-end" about={id} />;
}
