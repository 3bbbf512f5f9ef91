import { type AlarmDefinition, sensorsNamed } from '#core/alarms/definition';
import { callsWhen } from '#core/alarms/design/words';
import type { System } from '#core/facility/system';
import type { Speech } from './said';

/** Who answers an alarm; null for nobody. */
export function answererSaid({ names }: Speech, by: AlarmDefinition['answeredBy']): string | null {
  if (by === 'nobody') return null;
  return by === 'rota' ? 'the rota' : by.map(names.person).join(', ');
}

/** What an alarm watches, and when it is true. */
export function watchesSaid(system: System, { units, names }: Speech, { on }: AlarmDefinition): string {
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
