import type { AlarmDefinition } from '#core/alarms/definition';
import type { System } from '#core/facility/system';
import { type Column, Ledger } from '../table/ledger';
import { answererSaid, watchesSaid } from '../words/alarm-said';
import { lasting } from '../words/lasting';
import type { Speech } from '../words/said';

/** The alarms as defined: what they watch and who answers. */
export function AlarmTable({ system, speech }: { system: System; speech: Speech }) {
  const columns: Column<AlarmDefinition>[] = [
    { id: 'name', head: 'Alarm', cell: (alarm) => alarm.name },
    { id: 'on', head: 'Watches', cell: (alarm) => watchesSaid(system, speech, alarm) },
    { id: 'delay', head: 'Held for', figure: true, cell: (alarm) => lasting(alarm.delayS) },
    {
      id: 'answered',
      head: 'Answered by',
      cell: ({ answeredBy }) => answererSaid(speech, answeredBy) ?? <strong>nobody</strong>,
    },
    {
      id: 'safeguard',
      head: 'Proved by the tests of',
      cell: ({ safeguard }) => (safeguard === undefined ? 'nothing' : speech.names.safeguard(safeguard)),
    },
  ];
  return (
    <Ledger
      caption="An alarm counts as tested only when its way to a person is."
      columns={columns}
      rows={system.alarms}
      keyOf={(alarm) => alarm.key}
    />
  );
}
