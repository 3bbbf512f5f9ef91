import { refusalWords } from '#server/gate/refusal-words';
import { ask } from '#server/gate/ask';
import { listBroken, listBrokenShape } from '#server/record/list-broken';
import { listSystems, listSystemsShape } from '#server/reviews/list-systems';
import { Page } from '#ui/frame/page';
import { BrokenRecords } from '#ui/record/broken-records';
import { SystemsOverview } from '#ui/systems/systems-overview';
import { EmptySite } from '#ui/systems/empty-site';
import { RefreshOften } from '#ui/systems/refresh-often';
import { SiteList } from '#ui/systems/site-list';
import { WhoIsOn } from '#ui/systems/who-is-on';
import { loadDemoAction } from './actions';
import { chosenView } from './view/chosen-view';

const askSystems = ask(listSystemsShape, listSystems);
const askBroken = ask(listBrokenShape, listBroken);

export const metadata = { title: 'Systems' };

interface Address {
  searchParams: Promise<Record<string, unknown>>;
}

export default async function SystemsPage({ searchParams }: Address) {
  const [answer, broken] = await Promise.all([askSystems(undefined), askBroken(undefined)]);
  if (!answer.ok) {
    return (
      <Page title="Systems">
        <p>{refusalWords(answer.reason)}</p>
      </Page>
    );
  }
  const { at, sites, systems, mayBegin } = answer.value;
  if (sites.length === 0) {
    return (
      <Page title="Systems">
        {mayBegin ? (
          <EmptySite loadDemo={loadDemoAction} />
        ) : (
          <p>You have no role at any site yet. Whoever administers a site can give you one.</p>
        )}
      </Page>
    );
  }
  const { units } = await chosenView();
  return (
    <Page title="Systems">
      <BrokenRecords records={broken.ok ? broken.value : []} />
      <WhoIsOn sites={sites} at={at} />
      <SiteList sites={sites} mayBegin={mayBegin} />
      <SystemsOverview systems={systems} units={units} at={at} search={await searchParams} />
      <RefreshOften />
    </Page>
  );
}
