import type { FormAction } from '../form/answer';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { LiveRefresh } from '../live/live-refresh';
import type { SiteView } from './alarm-view';
import { EndSuppressionForm, OutOfServiceForm, ShelveForm } from './suppress-forms';
import { SuppressedTable } from './suppressed-table';
import type { SuppressChoiceView, SuppressedView } from './suppressed-view';

interface SuppressedBodyProps {
  page: {
    site: SiteView;
    suppressed: SuppressedView[];
    choices: SuppressChoiceView[];
    people: { id: string; name: string }[];
    mayShelve: boolean;
    mayTakeOut: boolean;
  };
  /** Id of the alarm that is chosen at first. */
  chosen?: string | undefined;
  shelve: FormAction<unknown>;
  takeOut: FormAction<unknown>;
  end: FormAction<unknown>;
}

/** The alarms that call nobody, and what makes one so: with an end and a reason always. */
export function SuppressedBody({ page, chosen, shelve, takeOut, end }: SuppressedBodyProps) {
  const { site, suppressed, choices, people, mayShelve, mayTakeOut } = page;
  const at = siteAddress(site.key);
  const endable = suppressed.filter(({ kind }) => kind === 'shelved' || (kind === 'out-of-service' && mayTakeOut));
  return (
    <Page
      title="Alarms that call nobody"
      over={[
        { href: '/', name: 'Systems' },
        { href: at, name: site.name },
        { href: `${at}/alarms`, name: 'Alarms' },
      ]}
      lead={<Lead site={site.key} />}
    >
      <Section id="now" title="Now" wide>
        {suppressed.length === 0 ? <p>Every alarm may call.</p> : <SuppressedTable site={site} lines={suppressed} />}
        {mayShelve
          ? endable.map(({ run, name }) => (
              <EndSuppressionForm key={run} site={site.key} run={run} name={name} action={end} />
            ))
          : null}
      </Section>
      {mayShelve && choices.length > 0 ? (
        <Section
          id="shelve"
          title="Shelve"
          note="For what will be over within hours: a probe in its buffer, a pump being cleaned. When its time is up, what is still active calls, and has to be acknowledged afresh."
        >
          <ShelveForm site={site.key} choices={choices} chosen={chosen} action={shelve} />
        </Section>
      ) : null}
      {mayTakeOut && choices.length > 0 && people.length > 0 ? (
        <Section
          id="out-of-service"
          title="Take out of service"
          note="For a repair that takes longer. Watch by hand meanwhile what the alarm watched: it calls nobody. Say who has it in hand."
        >
          <OutOfServiceForm site={site.key} choices={choices} chosen={chosen} people={people} action={takeOut} />
        </Section>
      ) : null}
    </Page>
  );
}

function Lead({ site }: { site: string }) {
  return (
    <>
      <p>
        Shelved by somebody, suppressed by design in an operating state, or out of service. Low oxygen, high
        temperature, oxidant and leak are never suppressed by design; a lead may shelve one for an hour.
      </p>
      <LiveRefresh site={site} what={['alarms', 'states']} />
    </>
  );
}
