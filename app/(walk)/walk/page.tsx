import type { Metadata } from 'next';
import { WalkApp } from '#ui/walk/walk-app';
import { chosenView } from '../../(house)/view/chosen-view';

export const metadata: Metadata = { title: 'Rounds' };

// A browser keeps this page and opens it without a signal, whoever is signed in then: nothing of a site or a person stands in it.
export default async function WalkPage() {
  const { units } = await chosenView();
  return <WalkApp units={units} />;
}
