import type { Metadata } from 'next';
import Link from '#ui/frame/link';
import { listCalls, listCallsShape } from '#server/calls/list-calls';
import { ask } from '#server/gate/ask';
import { listSystems, listSystemsShape } from '#server/reviews/list-systems';
import { MissedNote } from '#ui/calls/missed-note';
import { Page } from '#ui/frame/page';
import { LiveRefresh } from '#ui/live/live-refresh';
import { RefreshOften } from '#ui/systems/refresh-often';
import { WhoIsOn } from '#ui/systems/who-is-on';
import { SystemsOverview } from '#ui/systems/systems-overview';
import { answered } from '../../view/answered';
import { chosenView } from '../../view/chosen-view';
import { askSite, type SiteAddress } from './ask-site';

interface Address {
  params: Promise<SiteAddress>;
  searchParams: Promise<Record<string, unknown>>;
}

const askSystems = ask(listSystemsShape, listSystems);
const askCalls = ask(listCallsShape, listCalls);

export async function generateMetadata({ params }: Address): Promise<Metadata> {
  const answer = await askSite(await params);
  return { title: answer.ok ? answer.value.name : 'No such site' };
}

export default async function SitePage({ params, searchParams }: Address) {
  const site = answered(await askSite(await params));
  const { at, sites, systems } = answered(await askSystems({ site: site.key }));
  const calls = answered(await askCalls({ site: site.key }));
  const { units } = await chosenView();
  return (
    <Page
      title={site.name}
      over={[{ href: '/', name: 'Systems' }]}
      lead={
        <>
          <WhoIsOn sites={sites} at={at} />
          <MissedNote calls={calls} />
          <p>Times are those of {site.zone}.</p>
          {site.allowed.includes('describe') ? (
            <p>
              <Link href={`/sites/${encodeURIComponent(site.key)}/systems/new`}>Begin a system</Link>
            </p>
          ) : null}
        </>
      }
    >
      {systems.length > 0 ? (
        <SystemsOverview systems={systems} units={units} at={at} search={await searchParams} />
      ) : (
        <p>No system is described here yet, so there is nothing to review.</p>
      )}
      <LiveRefresh site={site.key} what={['alarms', 'rounds', 'states']} />
      <RefreshOften />
    </Page>
  );
}
