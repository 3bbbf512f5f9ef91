import { type AlarmDefinition, sensorsNamed } from '#core/alarms/definition';
import { callsWhen } from '#core/alarms/design/words';
import type { System } from '#core/facility/system';
import { type Column, Ledger } from '../table/ledger';
import { lasting } from '../words/lasting';
import type { Speech } from '../words/said';

/** The alarms as defined: what they watch and who answers. */
export function AlarmTable({ system, speech }: { system: System; speech: Speech }) {
  const columns: Column<AlarmDefinition>[] = [
    { id: 'name', head: 'Alarm', cell: (alarm) => alarm.name },
    { id: 'on', head: 'Watches', cell: (alarm) => watches(system, speech, alarm) },
    { id: 'delay', head: 'Held for', figure: true, cell: (alarm) => lasting(alarm.delayS) },
    { id: 'answered', head: 'Answered by', cell: ({ answeredBy }) => answered(speech, answeredBy) },
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

function answered({ names }: Speech, by: AlarmDefinition['answeredBy']) {
  if (by === 'nobody') return <strong>nobody</strong>;
  return by === 'rota' ? 'the rota' : by.map(names.person).join(', ');
}

function watches(system: System, { units, names }: Speech, { on }: AlarmDefinition): string {
  const [sensor, other] = sensorsNamed(on);
  const quantity = system.sensors.find((s) => s.key === sensor)?.quantity;
  const when = callsWhen(on, { quantity, custom: units });
  if (on.kind === 'watts') return `watts of ${names.equipment(on.equipment)}, outside its range or while off`;
  if (on.kind === 'run-limit') return `${names.equipment(on.equipment)}, ${when}`;
  if (on.kind === 'silent') return `silence of ${on.gateway}`;
  if (on.kind === 'silent-sensor') return `silence of ${names.sensor(on.sensor)}`;
  if (sensor === undefined) return when;
  const named = other === undefined ? names.sensor(sensor) : `${names.sensor(sensor)} and ${names.sensor(other)}`;
  return on.kind === 'sensor' ? `${named} ${when}` : `${named}, ${when}`;
}
