import type { AlarmDefinition } from '../alarms/definition';
import type { Sensor } from '../facility/system';
import type { Ground, Parts } from './parts';

/** How long it must be wrong before somebody is called, s, and how far back it must come, K. Common practice, no source. */
const DELAY_S = 300;
const DEAD_BAND_K = 0.2;

/**
 * The alarms on temperature, and their probe: one of its own in the first tank, unless the one that regulates is said to
 * call as well.
 *
 * @param regulating   the probe a controller regulates by, if there is one
 */
export function watchParts({ answers: { watch }, tanks: [first] }: Ground, regulating: Sensor | undefined): Parts {
  if (!watch || !first) return {};
  const { probe, aboveC, belowC, gateway, answeredBy } = watch;
  const own: Sensor = { key: 'alarm-probe', name: 'Alarm probe', quantity: 'temperature', tank: first.key };
  const isShared = probe === 'regulating' && regulating !== undefined;
  const sensor = { ...(isShared ? regulating : own), ...(gateway === undefined ? {} : { gateway }) };
  const alarm = (key: string, name: string, limit: { above: number } | { below: number }): AlarmDefinition => ({
    key,
    name,
    on: { kind: 'sensor', sensor: sensor.key, ...limit },
    delayS: DELAY_S,
    deadBand: DEAD_BAND_K,
    answeredBy,
  });
  return {
    sensors: [sensor],
    alarms: [
      ...(aboveC === undefined ? [] : [alarm('too-warm', 'Too warm', { above: aboveC })]),
      ...(belowC === undefined ? [] : [alarm('too-cold', 'Too cold', { below: belowC })]),
    ],
  };
}
