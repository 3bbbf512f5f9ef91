import { ask } from '#server/gate/ask';
import { listReadingSources, listSourcesShape } from '#server/readings/list-sources';
import { SourcesBody } from '#ui/sources/sources-body';
import { answered } from '../../../../view/answered';
import type { SiteAddress } from '../../ask-site';
import {
  addTopicAction,
  changeBrokerAction,
  endSourceAction,
  endTopicAction,
  makeBrokerAction,
  makeSourceAction,
  nameSensorAction,
  unnameSensorAction,
} from './actions';

const askSources = ask(listSourcesShape, listReadingSources);

export const metadata = { title: 'Sources of readings' };

export default async function SourcesPage({ params }: { params: Promise<SiteAddress> }) {
  const { site } = await params;
  const page = answered(await askSources({ site: decodeURIComponent(site) }));
  return (
    <SourcesBody
      page={page}
      actions={{
        make: makeSourceAction,
        end: endSourceAction,
        makeBroker: makeBrokerAction,
        changeBroker: changeBrokerAction,
        addTopic: addTopicAction,
        endTopic: endTopicAction,
        name: nameSensorAction,
        unname: unnameSensorAction,
      }}
    />
  );
}
