import type { ReactNode } from 'react';
import { Footer } from '#ui/frame/footer';
import { Masthead } from '#ui/frame/masthead';
import { ViewChoices } from '#ui/frame/view-choices';
import { chooseView } from '../(house)/view/actions';
import { chosenView } from '../(house)/view/chosen-view';

// The pages of somebody who is not signed in yet: they know nothing of any site.
export default async function Layout({ children }: { children: ReactNode }) {
  const { units, light } = await chosenView();
  return (
    <>
      <Masthead isOpen>
        <ViewChoices units={units} light={light} choose={chooseView} />
      </Masthead>
      {children}
      <Footer />
    </>
  );
}
