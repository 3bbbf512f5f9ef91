import type { ReactNode } from 'react';
import { Footer } from '#ui/frame/footer';
import { Masthead } from '#ui/frame/masthead';
import { ViewChoices } from '#ui/frame/view-choices';
import { chooseView } from './view/actions';
import { chosenView } from './view/chosen-view';

export default async function Layout({ children }: { children: ReactNode }) {
  const { units, light } = await chosenView();
  return (
    <>
      <Masthead>
        <ViewChoices units={units} light={light} choose={chooseView} />
      </Masthead>
      {children}
      <Footer />
    </>
  );
}
