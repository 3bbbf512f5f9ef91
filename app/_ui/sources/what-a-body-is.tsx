import { Ledger } from '../table/ledger';
import style from './sources.module.css';
import type { SensorChoice } from './sources-view';

const CSV = (path: string) => `name,time,value,unit\n${path},2026-05-01T08:30:00Z,25.3,°C`;
const SENML = (path: string) =>
  `[{"bn":"${path.split('/')[0] ?? ''}/","bt":1777624200,"n":"${path.split('/')[1] ?? ''}","u":"Cel","v":25.3}]`;

/** How readings are written, with the sensors of the site as they are always understood. */
export function WhatABodyIs({ sensors }: { sensors: SensorChoice[] }) {
  const path = sensors.find(({ quantity }) => quantity === 'temperature')?.path ?? sensors[0]?.path ?? 'system/sensor';
  return (
    <>
      <p>
        As SenML in JSON (RFC 8428), <code>application/senml+json</code>. Without <code>bt</code> and <code>t</code> a
        reading is of the moment it arrives; without <code>u</code> it is in the sensor’s unit.
      </p>
      <pre className={style.lines}>{SENML(path)}</pre>
      <p>
        Or as a table, <code>text/csv</code>:
      </p>
      <pre className={style.lines}>{CSV(path)}</pre>
      <p>
        Each record is answered for itself: stored, a repeat, in conflict with what is there, or refused and why. To put
        a value right, send it with <code>?correct=1</code>; both stay. At most 4 MB and 20,000 records at once. What
        cannot be is kept and marked bad, and raises no alarm; what is unlikely is marked suspect, and still does.
      </p>
      <Ledger
        caption="Names that are always understood"
        columns={[
          { id: 'path', head: 'Name', cell: (sensor) => <code>{sensor.path}</code> },
          { id: 'sensor', head: 'Sensor', cell: ({ name, systemName }) => `${systemName}: ${name}` },
        ]}
        rows={sensors}
        keyOf={({ id }) => id}
      />
    </>
  );
}
