import { getNewSite, getNewSiteShape } from '#server/describe/new-site';
import { ask } from '#server/gate/ask';
import { refusalWords } from '#server/gate/refusal-words';
import { NewSiteForm } from '#ui/describe/new-site-form';
import { Page } from '#ui/frame/page';
import { chosenView } from '../../view/chosen-view';
import { newSiteAction } from './actions';

const askNewSite = ask(getNewSiteShape, getNewSite);

export const metadata = { title: 'A new site' };

export default async function NewSitePage() {
  const { units } = await chosenView();
  const answer = await askNewSite({ units });
  return (
    <Page
      title="A new site"
      over={[{ href: '/', name: 'Systems' }]}
      lead={<p>What stands where, and in which air. Everything else is described afterwards, piece by piece.</p>}
    >
      {answer.ok ? (
        <NewSiteForm
          key={units}
          fields={answer.value.fields}
          shown={answer.value.draft}
          units={units}
          begin={newSiteAction}
        />
      ) : (
        <p>{refusalWords(answer.reason)}</p>
      )}
    </Page>
  );
}
