import type { Schedule } from '#core/rounds/schedule';
import { scheduleSaid } from '#core/rounds/schedule-words';
import type { Begun } from '#core/states/state-end';
import type { FormAction } from '../form/answer';
import { Fold } from '../frame/fold';
import { Section } from '../frame/section';
import { type Column, Ledger } from '../table/ledger';
import { lastingSaid, type SiteOfStates, type StateChoiceView, stateName } from './state-view';
import { EndTimedForm, TimeForm } from './time-form';

/** A state that begins by a schedule. */
export interface TimedView {
  id: string;
  state: Begun;
  schedule: Schedule;
  lastsMin: number;
}

interface Props {
  page: {
    site: SiteOfStates;
    system: { key: string };
    timed: TimedView[];
    timedEntry: string;
    today: string;
    choices: StateChoiceView[];
  };
  /** For those who may; null for others. */
  actions: { time: FormAction<unknown>; endTimed: FormAction<unknown> } | null;
}

/** What begins by the clock. */
export function TimedSection({ page: { site, system, timed, timedEntry, today, choices }, actions }: Props) {
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
        ? timed.map(({ id, state, schedule }) => (
            <Fold key={id} title={`No longer: ${stateName(state).toLowerCase()}, ${scheduleSaid(schedule)}`}>
              <EndTimedForm place={place} timed={id} end={actions.endTimed} />
            </Fold>
          ))
        : null}
      {actions ? (
        <Fold title="Have one begin by the clock">
          <TimeForm place={place} entry={timedEntry} today={today} choices={choices} time={actions.time} />
        </Fold>
      ) : null}
    </Section>
  );
}

const COLUMNS: Column<TimedView>[] = [
  { id: 'state', head: 'State', cell: ({ state }) => stateName(state) },
  { id: 'when', head: 'When', cell: ({ schedule }) => scheduleSaid(schedule) },
  { id: 'lasts', head: 'For', cell: ({ lastsMin }) => lastingSaid(lastsMin) },
];
