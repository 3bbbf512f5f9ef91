import type { ReactNode } from 'react';
import { Footer } from '#ui/frame/footer';
import { Masthead } from '#ui/frame/masthead';
import { ViewChoices } from '#ui/frame/view-choices';
import { chooseView } from '../(house)/view/actions';
import { chosenView } from '../(house)/view/chosen-view';
import { askDemo } from './ask-demo';

// The pages of somebody who is not signed in yet: they know nothing of any site but whether one is of the demonstration.
export default async function Layout({ children }: { children: ReactNode }) {
  const { units, light } = await chosenView();
  const demo = await askDemo(undefined);
  return (
    <>
      <Masthead isOpen isDemo={demo.ok && demo.value.isDemo}>
        <ViewChoices units={units} light={light} choose={chooseView} />
      </Masthead>
      {children}
      <Footer />
    </>
  );
}
