import Link from '../frame/link';
import type { Custom } from '#core/units/shown';
import type { Asked } from '#core/states/effective';
import type { FormAction } from '../form/answer';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { AskedSection } from './asked-section';
import { BeginChoice } from './begin-choice';
import { type EventView, StateEvents } from './state-events';
import { type StateActions, StateLine } from './state-line';
import type { SiteOfStates, StateChoiceView, StateLineView } from './state-view';
import { TimedSection, type TimedView } from './timed-section';
import { inForceSaid } from './states-body';

export interface SystemStatesView {
  site: SiteOfStates;
  system: { key: string; name: string };
  lines: StateLineView[];
  choices: StateChoiceView[];
  events: EventView[];
  equipment: string[];
  asked: Asked[];
  timed: TimedView[];
  timedEntry: string;
  today: string;
  mayTime: boolean;
  maySet: boolean;
}

interface Props {
  units: Custom;
  page: SystemStatesView;
  actions: StateActions & { begin: FormAction<unknown>; time: FormAction<unknown>; endTimed: FormAction<unknown> };
}

/** The states of one system: those it is in, those it can be put into, and what was done. */
export function SystemStatesBody({ page, actions, units }: Props) {
  const { site, system, lines, maySet, events } = page;
  const at = siteAddress(site.key);
  return (
    <Page
      title={`States of ${system.name}`}
      over={[
        { href: '/', name: 'Systems' },
        { href: at, name: site.name },
        { href: `${at}/states`, name: 'States' },
      ]}
      lead={
        <p>
          {inForceSaid(lines.filter(({ isOver }) => !isOver))} See also{' '}
          <Link href={siteAddress(site.key, 'systems', system.key)}>the system</Link>.
        </p>
      }
    >
      {lines.length > 0 ? (
        <Section id="in-force" title="In force">
          {lines.map((line) => (
            <StateLine
              key={line.run}
              units={units}
              site={site}
              line={line}
              actions={maySet ? actions : null}
              named={false}
            />
          ))}
        </Section>
      ) : null}
      <AskedSection asked={page.asked} />
      {maySet ? <Begin page={page} begin={actions.begin} /> : null}
      <TimedSection page={page} actions={page.mayTime ? actions : null} />
      <Section id="events" title="What was done" wide note="The latest first. Nothing here is changed or removed.">
        <StateEvents events={events} zone={site.zone} />
      </Section>
    </Page>
  );
}

function Begin({
  page: { site, system, choices, equipment },
  begin,
}: {
  page: SystemStatesView;
  begin: FormAction<unknown>;
}) {
  return (
    <Section id="begin" title="Begin a state" note="Every state has an end. Say how long; it can be put off.">
      {choices.map((choice) => (
        <BeginChoice
          key={choice.state}
          place={{ site: site.key, system: system.key }}
          choice={choice}
          equipment={equipment}
          begin={begin}
        />
      ))}
    </Section>
  );
}
