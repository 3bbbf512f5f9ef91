import { ThingPageBody } from '#ui/describe/thing-page';
import { answered } from '../../../view/answered';
import { chosenView } from '../../../view/chosen-view';
import { keepChangeAction, previewChangeAction, reviewChangeAction } from './actions';
import { askThing, systemIn, type ThingAddress } from './ask-thing';

export const CHANGE_ACTIONS = { preview: previewChangeAction, review: reviewChangeAction, keep: keepChangeAction };

/** The page of a thing, with the form for what is to be done with it. */
export async function ShowThing({ address }: { address: ThingAddress }) {
  const page = answered(await askThing(address));
  const { units } = await chosenView();
  const of = {
    site: page.site.key,
    act: page.act,
    noun: address.noun,
    system: systemIn(address.system) ?? null,
    key: decodeURIComponent(address.key),
    units,
  };
  return <ThingPageBody page={page} of={of} actions={CHANGE_ACTIONS} />;
}
