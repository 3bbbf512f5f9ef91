import type { Called } from '#core/incidents/words';
import type { Custom } from '#core/units/shown';
import type { FormAction } from '../form/answer';
import { Section } from '../frame/section';
import { LiveRefresh } from '../live/live-refresh';
import { EvidenceSteps, FirstThings } from './first-things';
import { IncidentFrame } from './incident-frame';
import type { HeadView, SensorView, StoryView } from './incident-view';
import { LogForm } from './log-form';
import { LogTable } from './log-table';
import { SampleForms } from './sample-forms';

interface IncidentProps {
  page: {
    head: HeadView;
    story: StoryView[];
    called: Called;
    ids: Readonly<Record<string, string>>;
    sensors: SensorView[];
  };
  units: Custom;
  log: FormAction<unknown>;
  withdraw: FormAction<unknown>;
}

/** The first page of an incident, on a phone in a wet hand: people, what failed, air and dosing, samples, log. */
export function IncidentBody({ page, units, log, withdraw }: IncidentProps) {
  const { head, story, called, ids, sensors } = page;
  return (
    <IncidentFrame head={head} page="log">
      <FirstThings head={head} story={story} ids={ids} log={log} />
      {head.mayLog ? (
        <Section
          id="samples"
          title="Water sample and meter reading"
          note="Within a minute, side by side, by two people if there are two. Neither waits for the other."
        >
          <SampleForms head={head} ids={ids} log={log} sensors={sensors} units={units} />
        </Section>
      ) : null}
      {head.mayLog ? (
        <Section
          id="write"
          title="Write in the log"
          note="What was seen and done, as it happens. Roles rather than names."
        >
          <LogForm head={head} id={ids.log} log={log} />
        </Section>
      ) : null}
      <EvidenceSteps head={head} story={story} ids={ids} log={log} />
      <Section id="entries" title="Log" wide>
        <LogTable head={head} story={story} called={called} ids={ids} units={units} log={log} withdraw={withdraw} />
      </Section>
      <LiveRefresh site={head.site.key} what={['incidents']} />
    </IncidentFrame>
  );
}
