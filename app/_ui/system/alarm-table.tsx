import type { AlarmDefinition } from '#core/alarms/definition';
import type { System } from '#core/facility/system';
import { type Column, Ledger } from '../table/ledger';
import { type FigureKind, figure } from '../units/figures';
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
  if (on.kind === 'watts') return `watts of ${names.equipment(on.equipment)}, outside its range or while off`;
  if (on.kind === 'silent') return `silence of ${on.gateway}`;
  if (on.kind === 'silent-sensor') return `silence of ${names.sensor(on.sensor)}`;
  const quantity = system.sensors.find((s) => s.key === on.sensor)?.quantity;
  const kind: FigureKind | undefined =
    quantity === 'temperature'
      ? 'temperature'
      : quantity === 'level'
        ? 'length'
        : quantity === 'flow'
          ? 'flow'
          : undefined;
  const said = (n: number) => (kind ? figure(units, kind, n) : String(n));
  const bounds = [
    on.above === undefined ? '' : `above ${said(on.above)}`,
    on.below === undefined ? '' : `below ${said(on.below)}`,
  ];
  return `${names.sensor(on.sensor)} ${bounds.filter(Boolean).join(' or ')}`;
}
