import type { Begun } from '#core/states/state-end';
import { type Column, Ledger } from '../table/ledger';
import { instantSaid } from '../words/instant';
import { momentSaid } from '../words/moment';
import { stateName } from './state-view';

/** Something that was done with a state. */
export interface EventView {
  id: string;
  state: Begun;
  kind: string;
  at: string;
  by: string;
  until: string | null;
  note: string | null;
}

const DONE: Record<string, string> = {
  begun: 'begun',
  'put-off': 'end put off',
  ended: 'ended',
  looked: 'looked after',
  authorised: 'let go on for a day',
};

/** What was done with the states of a system. */
export function StateEvents({ events, zone }: { events: EventView[]; zone: string }) {
  if (events.length === 0) return <p>Nothing yet.</p>;
  return (
    <Ledger caption={`Times are those of ${zone}.`} columns={columns(zone)} rows={events} keyOf={({ id }) => id} />
  );
}

function columns(zone: string): Column<EventView>[] {
  return [
    { id: 'at', head: 'When', cell: ({ at }) => <time dateTime={at}>{instantSaid(at, zone)}</time> },
    {
      id: 'what',
      head: 'What',
      cell: ({ state, kind, until }) =>
        `${stateName(state)} ${DONE[kind] ?? kind}${until ? `, until ${momentSaid(until, zone)}` : ''}`,
    },
    { id: 'by', head: 'By', cell: ({ by }) => by },
    { id: 'note', head: 'Said', cell: ({ note }) => note ?? '–' },
  ];
}
