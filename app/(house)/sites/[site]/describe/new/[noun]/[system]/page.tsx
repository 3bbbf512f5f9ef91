import type { Metadata } from 'next';
import { getNewThing, getNewThingShape } from '#server/describe/get-new-thing';
import { ask } from '#server/gate/ask';
import { NewThingPage } from '#ui/describe/new-thing-page';
import { answered } from '../../../../../../view/answered';
import { chosenView } from '../../../../../../view/chosen-view';
import { systemIn } from '../../../ask-thing';
import { CHANGE_ACTIONS } from '../../../show-thing';

const askNewThing = ask(getNewThingShape, getNewThing);

export const metadata: Metadata = { title: 'Add to the description' };

interface Address {
  params: Promise<{ site: string; noun: string; system: string }>;
}

export default async function AddThingPage({ params }: Address) {
  const { site, noun, system: part } = await params;
  const { units } = await chosenView();
  const system = systemIn(part);
  const page = answered(await askNewThing({ site: decodeURIComponent(site), noun, system, units }));
  const of = { site: page.site.key, act: 'add', noun, system: system ?? null, key: null, units } as const;
  return <NewThingPage page={page} of={of} actions={CHANGE_ACTIONS} />;
}
