import { headers } from 'next/headers';
import { redirect } from 'next/navigation';
import type { ReactNode } from 'react';
import { ask } from '#server/gate/ask';
import { machineNote, machineNoteShape } from '#server/machine/machine-note';
import { whoIsHere, whoIsHereShape } from '#server/sign-in/who-is-here';
import { Footer } from '#ui/frame/footer';
import { Masthead } from '#ui/frame/masthead';
import { RoomNote } from '#ui/frame/room-note';
import { SignedIn } from '#ui/frame/signed-in';
import { ViewChoices } from '#ui/frame/view-choices';
import { WatchNote } from '#ui/frame/watch-note';
import { signOutAction } from './sign-out';
import { chooseView } from './view/actions';
import { chosenView } from './view/chosen-view';
import { PATH_HEADER, toSignIn } from './view/to-sign-in';

const askHere = ask(whoIsHereShape, whoIsHere);

const askNote = ask(machineNoteShape, machineNote);
/** What is said to whoever is not known. */
const NOTHING = { room: null, maySeeMachine: false, watch: null };

export default async function Layout({ children }: { children: ReactNode }) {
  const here = await askHere(undefined);
  if (!here.ok) redirect(toSignIn((await headers()).get(PATH_HEADER)));
  const { name, isDemo } = here.value;
  const { units, light } = await chosenView();
  const note = await askNote(undefined);
  const { room, maySeeMachine, watch } = note.ok ? note.value : NOTHING;
  return (
    <>
      <Masthead isDemo={isDemo}>
        <SignedIn name={name} signOut={signOutAction} />
        <ViewChoices units={units} light={light} choose={chooseView} />
      </Masthead>
      <WatchNote watch={watch} />
      <RoomNote room={room} maySeeMachine={maySeeMachine} />
      {children}
      <Footer maySeeMachine={maySeeMachine} />
    </>
  );
}
