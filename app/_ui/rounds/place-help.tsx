import type { FormAction } from '../form/answer';
import type { Drafting } from '../form/draft';
import { type CalledView, CallHelp } from './call-help';
import type { LineView, PlaceView, RoundView } from './round-view';

interface PlaceHelpProps {
  page: RoundView;
  place: PlaceView;
  /** The line that it was seen on; left out for what is on none. */
  line?: LineView;
  call: FormAction<CalledView>;
  drafting?: Drafting | undefined;
}

/** Calls for help from a place of a round, which says where. */
export function PlaceHelp({ page: { site, round, systems, nextCall }, place, line, call, drafting }: PlaceHelpProps) {
  const of = line?.check.about.system ?? place.system?.key ?? null;
  return (
    <CallHelp
      site={site.key}
      systems={systems}
      system={of}
      where={line ? `${place.name}: ${line.check.what}` : place.name}
      round={round.id}
      // An entry and a call are told apart wherever their ids stand.
      nextCall={line?.nextEntry ?? nextCall}
      call={call}
      drafting={drafting}
    />
  );
}
