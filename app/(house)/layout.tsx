import type { ReactNode } from 'react';
import { ask } from '#server/gate/ask';
import { machineNote, machineNoteShape } from '#server/machine/machine-note';
import { Footer } from '#ui/frame/footer';
import { Masthead } from '#ui/frame/masthead';
import { RoomNote } from '#ui/frame/room-note';
import { ViewChoices } from '#ui/frame/view-choices';
import { chooseView } from './view/actions';
import { chosenView } from './view/chosen-view';

const askNote = ask(machineNoteShape, machineNote);
/** What is said to whoever is not known. */
const NOTHING = { room: null, maySeeMachine: false };

export default async function Layout({ children }: { children: ReactNode }) {
  const { units, light } = await chosenView();
  const note = await askNote(undefined);
  const { room, maySeeMachine } = note.ok ? note.value : NOTHING;
  return (
    <>
      <Masthead>
        <ViewChoices units={units} light={light} choose={chooseView} />
      </Masthead>
      <RoomNote room={room} maySeeMachine={maySeeMachine} />
      {children}
      <Footer maySeeMachine={maySeeMachine} />
    </>
  );
}
