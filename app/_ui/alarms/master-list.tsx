import Link from '../frame/link';
import type { AlarmDefinition } from '#core/alarms/definition';
import { kindWords } from '#core/alarms/design/words';
import type { System } from '#core/facility/system';
import { differenceSaid } from '#core/readings/figures';
import type { AlarmDesign, FaultCase } from '#core/review/result';
import { thingAddress } from '../describe/thing-address';
import { type Column, Ledger } from '../table/ledger';
import { answererSaid, watchesSaid } from '../words/alarm-said';
import { lasting } from '../words/lasting';
import type { Speech } from '../words/said';
import { priorityOf, problemsOf, whyPriority } from './design-words';
import style from './master-list.module.css';

interface MasterListProps {
  site: string;
  system: System;
  /** What the review makes of each alarm; empty while it is not known. */
  designs: readonly AlarmDesign[];
  cases: readonly FaultCase[];
  speech: Speech;
  mayDescribe: boolean;
}

/** Every alarm of a system with all that was decided of it. */
export function MasterList({ site, system, designs, cases, speech, mayDescribe }: MasterListProps) {
  const designOf = (alarm: AlarmDefinition) => designs.find((one) => one.alarm === alarm.key);
  const columns: Column<AlarmDefinition>[] = [
    {
      id: 'name',
      head: 'Alarm',
      cell: (alarm) => (
        <>
          {mayDescribe ? (
            <Link href={thingAddress(site, 'alarm', system.key, alarm.key)}>{alarm.name}</Link>
          ) : (
            alarm.name
          )}
          <span className={style.about}>{kindWords(alarm.on, quantityOf(system, alarm))}</span>
        </>
      ),
    },
    { id: 'calls', head: 'Calls', cell: (alarm) => <Calls system={system} alarm={alarm} speech={speech} /> },
    {
      id: 'priority',
      head: 'Priority',
      cell: (alarm) => <PriorityCell alarm={alarm} design={designOf(alarm)} cases={cases} />,
    },
    {
      id: 'cause',
      head: 'Cause and consequence',
      cell: ({ cause, consequence }) => (
        <>
          <p className={style.line}>{cause ?? 'Cause: not written.'}</p>
          <p className={style.line}>{consequence ?? 'Consequence: not written.'}</p>
        </>
      ),
    },
    { id: 'do', head: 'What to do, and who', cell: (alarm) => <Response alarm={alarm} speech={speech} /> },
    {
      id: 'problems',
      head: 'Design problems',
      cell: (alarm) => <Problems lines={problemsOf(alarm, designOf(alarm), quantityOf(system, alarm), speech.units)} />,
    },
  ];
  return (
    <Ledger
      caption="The time to act in is that from the alarm to the last chance, in the gravest fault case it is the first to tell of."
      columns={columns}
      rows={system.alarms}
      keyOf={({ key }) => key}
    />
  );
}

function quantityOf(system: System, { on }: AlarmDefinition) {
  return 'sensor' in on ? system.sensors.find(({ key }) => key === on.sensor)?.quantity : undefined;
}

function Calls({ system, alarm, speech }: { system: System; alarm: AlarmDefinition; speech: Speech }) {
  const { deadBand, delayS, offDelayS = 0, suppressedIn = [], latched } = alarm;
  const quantity = quantityOf(system, alarm);
  const band = quantity === undefined ? String(deadBand) : differenceSaid(quantity, speech.units, deadBand);
  return (
    <>
      <p className={style.line}>{watchesSaid(system, speech, alarm)}</p>
      <p className={style.about}>
        On-delay {lasting(delayS)}, off-delay {lasting(offDelayS)}
        {deadBand > 0 ? `, dead band ${band}` : ''}
        {latched ? ', stays until reset' : ''}
      </p>
      {suppressedIn.length > 0 ? (
        <p className={style.about}>Not called in {suppressedIn.map((one) => one.replaceAll('-', ' ')).join(', ')}</p>
      ) : null}
    </>
  );
}

interface PriorityCellProps {
  alarm: AlarmDefinition;
  design: AlarmDesign | undefined;
  cases: readonly FaultCase[];
}

function PriorityCell({ alarm, design, cases }: PriorityCellProps) {
  const decides = cases.find(({ id }) => id === design?.case);
  return (
    <>
      <p className={style.line}>{priorityOf(alarm, design) ?? 'not known yet'}</p>
      {design ? (
        <p className={style.about}>
          {alarm.priority ? `The review proposes ${design.proposed}: ` : ''}
          {whyPriority(design)}
          {decides ? ` (${decides.title}, ${decides.thing.name})` : ''}
          {design.neededS === null ? '' : `. From its call to put right: ${lasting(design.neededS)} at the worst hour`}
        </p>
      ) : null}
      {alarm.priority ? <p className={style.about}>Own choice: {alarm.priority.why}</p> : null}
    </>
  );
}

function Response({ alarm, speech }: { alarm: AlarmDefinition; speech: Speech }) {
  const who = answererSaid(speech, alarm.answeredBy);
  return (
    <>
      <p className={style.text}>{alarm.whatToDo ?? 'Not written.'}</p>
      <p className={style.about}>{who === null ? <strong>Nobody answers it</strong> : `Answered by ${who}`}</p>
    </>
  );
}

function Problems({ lines }: { lines: readonly string[] }) {
  if (lines.length === 0) return <>none</>;
  return (
    <ul className={style.problems}>
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}
