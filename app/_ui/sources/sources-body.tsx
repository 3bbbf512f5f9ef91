import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { LiveRefresh } from '../live/live-refresh';
import { type Column, Ledger } from '../table/ledger';
import { instantSaid } from '../words/instant';
import { MakeBrokerForm } from './broker-forms';
import { BrokerSection } from './broker-section';
import { EndForm, MakeForm, NameForm, UnnameForm } from './source-forms';
import type { SourceActions, SourcesView, SourceView, UnknownView } from './sources-view';
import { WaysIn } from './ways-in';

/** Who may send readings of a site by themselves, and what their names for its sensors mean. */
export function SourcesBody({ page, actions }: { page: SourcesView; actions: SourceActions }) {
  const { site, sources } = page;
  const at = siteAddress(site.key);
  return (
    <Page
      title="Sources of readings"
      over={[
        { href: '/', name: 'Systems' },
        { href: at, name: site.name },
        { href: `${at}/readings`, name: 'Readings' },
      ]}
      lead={
        <>
          <p>
            How readings of {site.name} come by themselves: from gateways, controllers, a broker, a script of your own.
          </p>
          <LiveRefresh site={site.key} what={['sources']} />
        </>
      }
    >
      <Section id="sources" title="Sources" wide>
        {sources.length === 0 ? (
          <p>Nothing sends readings yet.</p>
        ) : (
          <Ledger
            caption={`Times are those of ${site.zone}.`}
            columns={sourceColumns(page, actions)}
            rows={sources}
            keyOf={({ id }) => id}
          />
        )}
      </Section>
      {sources.map(({ broker, ...source }) =>
        broker ? <BrokerSection key={source.id} page={page} source={source} broker={broker} actions={actions} /> : null,
      )}
      <Another page={page} actions={actions} />
      <Unknown page={page} actions={actions} />
      <Aliases page={page} actions={actions} />
      <WaysIn page={page} />
    </Page>
  );
}

/** Lets something more send, or has something more come from a broker. */
function Another({ page: { site, gateways }, actions }: { page: SourcesView; actions: SourceActions }) {
  return (
    <>
      <Section
        id="make"
        title="Another that sends"
        note="Each has a token of its own, so that each can be ended by itself."
      >
        <MakeForm site={site.key} gateways={gateways} make={actions.make} />
      </Section>
      <Section
        id="make-broker"
        title="Another broker"
        note="Holdfast connects to it and listens. What it does not hear of for a while, the broker keeps."
      >
        <MakeBrokerForm site={site.key} gateways={gateways} make={actions.makeBroker} />
      </Section>
    </>
  );
}

function Unknown({ page, actions }: { page: SourcesView; actions: SourceActions }) {
  const { unknown } = page;
  if (unknown.length === 0) return null;
  return (
    <Section id="unknown" title="Names of no sensor" note="Readings under them were refused." wide>
      <Ledger
        caption="Say whose they are, and what comes from then on is stored."
        columns={unknownColumns(page, actions)}
        rows={unknown}
        keyOf={({ name }) => name}
      />
    </Section>
  );
}

function Aliases({ page: { site, aliases, sensors }, actions }: { page: SourcesView; actions: SourceActions }) {
  if (aliases.length === 0) return null;
  const called = new Map(sensors.map(({ id, name, systemName }) => [id, `${systemName}: ${name}`] as const));
  return (
    <Section id="names" title="Other names of sensors" wide>
      <Ledger
        caption="Beside those that are always understood"
        columns={[
          { id: 'name', head: 'Name', cell: ({ name }) => name },
          { id: 'sensor', head: 'Sensor', cell: ({ sensor }) => called.get(sensor) ?? 'one that is there no longer' },
          {
            id: 'away',
            head: 'Take away',
            cell: ({ name }) => <UnnameForm site={site.key} name={name} action={actions.unname} />,
          },
        ]}
        rows={aliases}
        keyOf={({ name }) => name}
      />
    </Section>
  );
}

function sourceColumns({ site }: SourcesView, { end }: SourceActions): Column<SourceView>[] {
  return [
    { id: 'name', head: 'Source', cell: ({ name }) => name },
    { id: 'way', head: 'How', cell: ({ isBroker }) => (isBroker ? 'MQTT broker' : 'HTTP, by its token') },
    { id: 'gateway', head: 'Gateway', cell: ({ gateway }) => gateway ?? '–' },
    { id: 'made', head: 'Made', cell: ({ createdAt, by }) => `${instantSaid(createdAt, site.zone)}, ${by}` },
    {
      id: 'used',
      head: 'Last sent',
      cell: ({ usedAt, broker }) => {
        const last = broker?.messageAt ?? usedAt;
        return last === null ? 'nothing yet' : instantSaid(last, site.zone);
      },
    },
    {
      id: 'end',
      head: 'End',
      cell: ({ id, endedAt, isBroker }) =>
        endedAt === null ? (
          <EndForm site={site.key} source={id} isBroker={isBroker} end={end} />
        ) : (
          `ended ${instantSaid(endedAt, site.zone)}`
        ),
    },
  ];
}

function unknownColumns({ site, sensors }: SourcesView, { name: action }: SourceActions): Column<UnknownView>[] {
  return [
    { id: 'name', head: 'Name', cell: ({ name }) => name },
    { id: 'seen', head: 'Last came', cell: ({ seenAt }) => instantSaid(seenAt, site.zone) },
    {
      id: 'value',
      head: 'Last value',
      figure: true,
      cell: ({ value, unit }) => (value === null ? '–' : `${value}${unit === null ? '' : ` ${unit}`}`),
    },
    {
      id: 'sensor',
      head: 'It is',
      cell: ({ name }) => <NameForm site={site.key} name={name} sensors={sensors} action={action} />,
    },
  ];
}
