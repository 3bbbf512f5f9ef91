import 'server-only';
import { dataFolder } from './places';
import { roomOf, roomState } from './room';

/**
 * Whether the disk of the data folder can still take a change. Asked of the system each time, as that costs next to nothing;
 * a disk that the system says nothing of is taken to have room.
 */
export async function hasRoom(): Promise<boolean> {
  const room = await roomOf(dataFolder());
  return room === null || roomState(room) !== 'none';
}
