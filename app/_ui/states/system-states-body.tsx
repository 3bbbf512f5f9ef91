import Link from 'next/link';
import type { Custom } from '#core/units/shown';
import type { Asked } from '#core/states/effective';
import type { FormAction } from '../form/answer';
import { Fold } from '../frame/fold';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { AskedSection } from './asked-section';
import { ProofList } from './proof-list';
import { StateCautions } from './state-cautions';
import { type EventView, StateEvents } from './state-events';
import { BeginForm } from './state-forms';
import { type StateActions, StateLine } from './state-line';
import { lastingSaid, type SiteOfStates, type StateChoiceView, type StateLineView, stateName } from './state-view';
import { TimedSection, type TimedView } from './timed-section';
import { inForceSaid } from './states-body';
import style from './states.module.css';

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
        <Fold key={choice.state} title={`${stateName(choice.state)}, usually ${lastingSaid(choice.lastsMin)}`}>
          {choice.isDescribed ? null : (
            <p className={style.small}>
              The description of this system does not speak of this state, so no plan and no review reckons with it.
            </p>
          )}
          <p className={style.small}>
            {choice.hasHandsIn
              ? 'Hands are in the water: it never ends by itself.'
              : choice.endsItself
                ? 'A device ends it.'
                : 'A person ends it.'}
          </p>
          {choice.stopsAir ? (
            <p>
              It stops what brings oxygen in:{' '}
              <Link href={siteAddress(site.key, 'states', system.key, choice.state)}>
                see how long the oxygen lasts, and begin it there
              </Link>
              .
            </p>
          ) : (
            <>
              <StateCautions state={choice.state} equipment={equipment} />
              <ProofList proofs={choice.proofs} />
              <BeginForm place={{ site: site.key, system: system.key }} choice={choice} begin={begin} />
            </>
          )}
        </Fold>
      ))}
    </Section>
  );
}
