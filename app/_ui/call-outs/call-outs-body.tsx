import Link from '../frame/link';
import { cautionsFor, cautionText } from '#core/cautions/cautions-for';
import type { FormAction } from '../form/answer';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { LiveRefresh } from '../live/live-refresh';
import { BeginForm } from './begin-form';
import type { CallOutsView } from './call-outs-view';
import { OpenCallOut } from './open-call-out';
import { PastCallOuts } from './past-call-outs';

/** What can be done on the page. */
export interface CallOutActions {
  begin: FormAction<unknown>;
  extend: FormAction<unknown>;
  seeTo: FormAction<unknown>;
  end: FormAction<unknown>;
}

/** Who is in alone at a site, the press that says that one goes, and those that end it. */
export function CallOutsBody({ page, actions }: { page: CallOutsView; actions: CallOutActions }) {
  const { site, open, past, people, mayBegin } = page;
  const at = siteAddress(site.key);
  return (
    <Page
      title="In alone"
      over={[
        { href: '/', name: 'Systems' },
        { href: at, name: site.name },
        { href: `${at}/alarms`, name: 'Alarms' },
      ]}
      lead={
        <>
          <p>
            {leadOf(page)} {mayBegin ? <Link href={`${at}/keys`}>Who has which key</Link> : null}
          </p>
          <LiveRefresh site={site.key} what={['alarms']} />
        </>
      }
    >
      {open.map((one) => (
        <OpenCallOut key={one.id} site={site} line={one} actions={actions} />
      ))}
      {mayBegin ? (
        <Section
          id="begin"
          title="I am going in alone"
          note="When the time is over and nobody has said that you are back, whoever is on is called, then the others, until a person says so."
        >
          <BeginForm site={site.key} people={people} begin={actions.begin} />
        </Section>
      ) : null}
      <Section id="cautions" title="Before anybody goes" note="Local rules on working alone come first.">
        <ul>
          {cautionsFor({ doing: 'alarm', floor: true }).map((caution) => (
            <li key={caution.key}>{cautionText(caution)}</li>
          ))}
          <li>
            A telephone without a signal calls nobody. Where you go, see that it has one, or tell somebody by voice.
            Holdfast can stop like any machine: it takes the place of nobody who waits for you.
          </li>
        </ul>
      </Section>
      <PastCallOuts past={past} zone={site.zone} />
    </Page>
  );
}

function leadOf({ open }: CallOutsView): string {
  const overdue = open.filter(({ state }) => state === 'overdue').length;
  if (open.length === 0) return 'Nobody said that they are in alone.';
  const said = open.length === 1 ? 'One person is in alone' : `${open.length} people are in alone`;
  return overdue === 0 ? `${said}.` : `${said}, ${overdue === 1 ? 'one' : overdue} not back in time.`;
}
