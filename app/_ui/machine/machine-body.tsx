import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { instantSaid } from '../words/instant';
import { Backups } from './backups';
import { Disks } from './disks';
import { Facts } from './facts';
import { bytesSaid, type MachineView } from './machine-view';
import { readingFacts } from './reading-facts';

const WORKER_WORDS = {
  up: 'at work',
  late: 'gave no sign lately',
  'never seen': 'was never seen',
  unknown: 'is not known of',
} as const;

/** What Holdfast runs on: backups, disks, worker and database. */
export function MachineBody({ machine }: { machine: MachineView }) {
  const { backups, disks, stopUnder, worker, watch, database, anchor } = machine;
  const seen = worker.workerLastSeen;
  return (
    <Page title="Machine" lead={<p>What Holdfast itself runs on. Times are UTC.</p>}>
      <Section id="backups" title="Backups">
        <Backups backups={backups} />
      </Section>
      <Section id="disks" title="Disks" note={<p>Looked at every minute by the workers.</p>}>
        <Disks disks={disks} stopUnder={stopUnder} isElsewhere={database.place === 'elsewhere'} />
      </Section>
      <Section
        id="watch"
        title="Who watches Holdfast"
        note={<p>An address outside that expects a word each minute notices when everything here is dark.</p>}
      >
        <Facts facts={watchFacts(watch)} />
      </Section>
      <Section id="readings" title="Readings">
        <Facts facts={readingFacts(machine.readings)} />
      </Section>
      <Section id="processes" title="Worker, database, record">
        <Facts
          facts={[
            { name: 'Worker', value: WORKER_WORDS[worker.worker], isAbnormal: worker.worker !== 'up' },
            { name: 'Last sign', value: seen === null ? 'none' : instantSaid(seen, 'UTC') },
            { name: 'Database', value: `PostgreSQL ${database.version}` },
            { name: 'Its size', value: bytesSaid(database.bytes) },
            { name: 'It stands', value: database.place === 'here' ? 'in the data folder' : 'elsewhere' },
            {
              name: 'Record anchored',
              value: anchor ? `${instantSaid(anchor.at, 'UTC')}, by ${anchor.place}` : 'never, anywhere else',
              isAbnormal: anchor === null || anchor.isLate,
            },
          ]}
        />
      </Section>
    </Page>
  );
}

const PATH_WORDS = { up: 'reached', down: 'not reached', unknown: 'not looked at yet' } as const;

function watchFacts({ alarms, alarmsJudgedAt, callsWaiting, mail, outside }: MachineView['watch']) {
  return [
    {
      name: 'Alarms',
      value: alarms === 'no site' ? 'no site yet' : alarms === 'judged' ? 'judged' : 'not judged',
      isAbnormal: alarms === 'not judged',
    },
    { name: 'Last judged', value: alarmsJudgedAt === null ? 'never' : instantSaid(alarmsJudgedAt, 'UTC') },
    { name: 'People who wait to be told', value: String(callsWaiting ?? 0), isAbnormal: (callsWaiting ?? 0) > 0 },
    {
      name: 'Mail server',
      value: mail === 'not set up' ? 'none was named: nobody is told by e-mail' : PATH_WORDS[mail],
      isAbnormal: mail === 'down' || mail === 'not set up',
    },
    {
      name: 'Watch kept outside',
      value: outside === 'not set up' ? 'none: nobody would notice silence' : PATH_WORDS[outside],
      isAbnormal: outside === 'down' || outside === 'not set up',
    },
  ];
}
