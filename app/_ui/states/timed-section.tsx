import type { Begun } from '#core/states/state-end';
import type { FormAction } from '../form/answer';
import { Fold } from '../frame/fold';
import { Section } from '../frame/section';
import { type Column, Ledger } from '../table/ledger';
import { lastingSaid, type SiteOfStates, type StateChoiceView, stateName } from './state-view';
import { EndTimedForm, TimeForm } from './time-form';

/** A state that begins at certain times of the week. */
export interface TimedView {
  id: string;
  state: Begun;
  days: string[];
  at: string;
  lastsMin: number;
}

interface Props {
  page: {
    site: SiteOfStates;
    system: { key: string };
    timed: TimedView[];
    timedEntry: string;
    choices: StateChoiceView[];
  };
  /** For those who may; null for others. */
  actions: { time: FormAction<unknown>; endTimed: FormAction<unknown> } | null;
}

/** What begins by the clock. */
export function TimedSection({ page: { site, system, timed, timedEntry, choices }, actions }: Props) {
  if (timed.length === 0 && !actions) return null;
  const place = { site: site.key, system: system.key };
  return (
    <Section
      id="timed"
      title="Begun by the clock"
      note={`Times are those of ${site.zone}. With hands in the water it is only asked: no clock knows whether they are in.`}
    >
      {timed.length > 0 ? (
        <Ledger caption="In order of the day." columns={COLUMNS} rows={timed} keyOf={({ id }) => id} />
      ) : null}
      {actions
        ? timed.map(({ id, state, at }) => (
            <Fold key={id} title={`No longer: ${stateName(state).toLowerCase()} at ${at}`}>
              <EndTimedForm place={place} timed={id} end={actions.endTimed} />
            </Fold>
          ))
        : null}
      {actions ? (
        <Fold title="Have one begin by the clock">
          <TimeForm place={place} entry={timedEntry} choices={choices} time={actions.time} />
        </Fold>
      ) : null}
    </Section>
  );
}

const COLUMNS: Column<TimedView>[] = [
  { id: 'at', head: 'At', cell: ({ at }) => at },
  { id: 'state', head: 'State', cell: ({ state }) => stateName(state) },
  { id: 'days', head: 'Days', cell: ({ days }) => days.join(', ') },
  { id: 'lasts', head: 'For', cell: ({ lastsMin }) => lastingSaid(lastsMin) },
];
