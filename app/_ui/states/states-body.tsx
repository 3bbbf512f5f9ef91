import Link from '../frame/link';
import type { Custom } from '#core/units/shown';
import type { FormAction } from '../form/answer';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { AskedBegunSection, type AskedView } from './asked-begun-section';
import { NoticesSection, type NoticeView } from './notices-section';
import { SecondsSection, type SecondView } from './seconds-section';
import { WatchesSection, type WatchView } from './watches-section';
import { type StateActions, StateLine } from './state-line';
import type { SiteOfStates, StateLineView } from './state-view';

export interface StatesView {
  site: SiteOfStates;
  lines: StateLineView[];
  systems: { key: string; name: string }[];
  asked: AskedView[];
  notices: NoticeView[];
  noticeEntry: string;
  watches: WatchView[];
  seconds: SecondView[];
  maySet: boolean;
}

export interface StatesPageActions extends StateActions {
  look: FormAction<unknown>;
  second: FormAction<unknown>;
  takeBack: FormAction<unknown>;
  answer: FormAction<unknown>;
  addNotice: FormAction<unknown>;
  endNotice: FormAction<unknown>;
}

/** The states that systems of a site are in. */
export function StatesBody({ page, actions, units }: { page: StatesView; actions: StatesPageActions; units: Custom }) {
  const { site, lines, systems, watches, seconds, maySet } = page;
  const given = maySet ? actions : null;
  const inForce = lines.filter(({ isOver }) => !isOver);
  return (
    <Page
      title="States"
      over={[
        { href: '/', name: 'Systems' },
        { href: siteAddress(site.key), name: site.name },
      ]}
      lead={
        <p>
          {inForceSaid(inForce)} Holdfast switches nothing: a state says what people and controllers do. Times are those
          of {site.zone}.
        </p>
      }
    >
      <AskedBegunSection site={site} asked={page.asked} answer={given && actions.answer} />
      <Lines site={site} lines={lines} actions={given} units={units} />
      <SecondsSection
        site={site}
        seconds={seconds}
        sign={given && actions.second}
        takeBack={given && actions.takeBack}
      />
      <WatchesSection site={site} watches={watches} look={given && actions.look} takeBack={given && actions.takeBack} />
      <NoticesSection
        site={site}
        notices={page.notices}
        systems={systems}
        entry={page.noticeEntry}
        actions={given && { add: actions.addNotice, end: actions.endNotice }}
      />
      <Section id="systems" title={maySet ? 'Begin a state' : 'By system'} note="Choose the system.">
        <ul>
          {systems.map(({ key, name }) => (
            <li key={key}>
              <Link href={siteAddress(site.key, 'states', key)}>{name}</Link>
            </li>
          ))}
        </ul>
      </Section>
    </Page>
  );
}

/** States in force, and those that a device ended. */
function Lines({
  site,
  lines,
  actions,
  units,
}: {
  site: SiteOfStates;
  lines: readonly StateLineView[];
  actions: StateActions | null;
  units: Custom;
}) {
  const inForce = lines.filter(({ isOver }) => !isOver);
  const over = lines.filter(({ isOver }) => isOver);
  return (
    <>
      {inForce.length > 0 ? (
        <Section id="in-force" title="In force" note="Those past their end come first.">
          {inForce.map((line) => (
            <StateLine key={line.run} units={units} site={site} line={line} actions={actions} named />
          ))}
        </Section>
      ) : null}
      {over.length > 0 ? (
        <Section
          id="over"
          title="Ended by a device"
          note="A device was to end them. That everything runs, somebody has yet to see."
        >
          {over.map((line) => (
            <StateLine key={line.run} units={units} site={site} line={line} actions={actions} named />
          ))}
        </Section>
      ) : null}
    </>
  );
}

/** How many are in force, in a sentence. */
export function inForceSaid(lines: readonly Pick<StateLineView, 'outstayed'>[]): string {
  const late = lines.filter(({ outstayed }) => outstayed).length;
  if (lines.length === 0) return 'Everything is in normal running, as far as anybody has said.';
  const said = lines.length === 1 ? 'One state is in force' : `${lines.length} states are in force`;
  return late === 0 ? `${said}.` : `${said}, ${late === lines.length ? 'past its end' : `${late} past the end`}.`;
}
