import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { Ledger } from '../table/ledger';
import style from './sources.module.css';
import type { SensorChoice, SourcesView } from './sources-view';

/** Every way in for readings, with what to copy for each. */
export function WaysIn({ page: { site, address, sensors } }: { page: SourcesView }) {
  const path = sensors.find(({ quantity }) => quantity === 'temperature')?.path ?? sensors[0]?.path ?? 'system/sensor';
  const at = siteAddress(site.key);
  return (
    <>
      <Section id="http" title="By HTTP" note="For whatever can send by itself.">
        <ByHttp address={address} path={path} />
      </Section>
      <Section id="mqtt" title="By MQTT" note="For what sends to a broker already.">
        <ByMqtt path={path} />
      </Section>
      <Section id="others" title="By file and by hand">
        <p>
          The file of a logger is <a href={`${at}/readings/take-in`}>taken in on its page</a>, or by{' '}
          <code>npm run -s take-in -- FILE --site {site.key} --layout NAME</code>. What is entered on{' '}
          <a href={`${at}/rounds`}>rounds</a> stands in the same series, marked as taken by hand.
        </p>
      </Section>
      <Section id="always" title="Names that are always understood" wide>
        <Names sensors={sensors} />
      </Section>
    </>
  );
}

function ByHttp({ address, path }: { address: string; path: string }) {
  const [system = '', sensor = ''] = path.split('/');
  return (
    <>
      <p>
        As SenML in JSON (RFC 8428). Without <code>bt</code> and <code>t</code> a reading is of the moment it arrives;
        without <code>u</code> it is in the sensor’s unit.
      </p>
      <pre className={style.lines}>
        {[
          `curl ${address} \\`,
          "  -H 'Authorization: Bearer TOKEN' \\",
          "  -H 'Content-Type: application/senml+json' \\",
          `  -d '[{"bn":"${system}/","bt":1777624200,"n":"${sensor}","u":"Cel","v":25.3}]'`,
        ].join('\n')}
      </pre>
      <p>
        Or as a table, <code>text/csv</code>:
      </p>
      <pre className={style.lines}>{`name,time,value,unit\n${path},2026-05-01T08:30:00Z,25.3,°C`}</pre>
      <p>
        Each record is answered for itself: stored, a repeat, in conflict with what is there, or refused and why. To put
        a value right, send it with <code>?correct=1</code>; both stay. At most 4 MB and 20,000 records at once. What
        cannot be is kept and marked bad, and raises no alarm; what is unlikely is marked suspect, and still does. What
        comes more than an hour after it was taken is marked late: it counts, ends no alarm, and is no word of its
        sensor; the answer marks those records, and says how many they are.
      </p>
    </>
  );
}

function ByMqtt({ path }: { path: string }) {
  return (
    <>
      <p>
        Under a topic that names system and sensor by their keys, listened to as{' '}
        <code>plant/{'{system}/{sensor}'}/value</code>:
      </p>
      <pre className={style.lines}>{`mosquitto_pub -h BROKER -q 1 -t plant/${path}/value -m 25.3`}</pre>
      <p>
        With quality of service 1 the broker keeps what comes while Holdfast is away. A value without a time of its own
        is of the moment it arrives here: where that matters send SenML, or an object with its time. What the broker had
        kept as retained is not taken as new.
      </p>
      <p>
        Of Sparkplug B listen to <code>spBv1.0/GROUP/#</code>; a value is called <code>GROUP/NODE/METRIC</code> or{' '}
        <code>GROUP/NODE/DEVICE/METRIC</code>, and stands under the names of no sensor until somebody says whose it is.
        When a node dies or its count has a gap, its gateway counts as silent at once.
      </p>
    </>
  );
}

function Names({ sensors }: { sensors: SensorChoice[] }) {
  return (
    <Ledger
      caption="By the keys of system and sensor"
      columns={[
        { id: 'path', head: 'Name', cell: (sensor) => <code>{sensor.path}</code> },
        { id: 'sensor', head: 'Sensor', cell: ({ name, systemName }) => `${systemName}: ${name}` },
      ]}
      rows={sensors}
      keyOf={({ id }) => id}
    />
  );
}
