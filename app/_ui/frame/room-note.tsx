import Link from './link';
import style from './room-note.module.css';

/** What is known of a disk that is nearly full. */
export interface RoomView {
  state: 'low' | 'none';
  holds: 'data' | 'backups';
  /** Free room in words. */
  free: string;
}

/** Stands on every page while a disk is nearly full; nothing otherwise. */
export function RoomNote({ room, maySeeMachine }: { room: RoomView | null; maySeeMachine: boolean }) {
  if (room === null) return null;
  return (
    <aside className={style.note} aria-label="Room on the disk">
      <p>
        <strong>{headOf(room)}</strong> {wordsOf(room)}{' '}
        {maySeeMachine ? <Link href="/machine">See the disks</Link> : 'Tell whoever looks after Holdfast.'}
      </p>
    </aside>
  );
}

function headOf({ state, free }: RoomView): string {
  return state === 'none' ? `The disk is full (${free} left).` : `A disk is nearly full: ${free} left.`;
}

function wordsOf({ state, holds }: RoomView): string {
  if (state === 'none') return 'Nothing can be entered or changed until there is room again; reading goes on.';
  return holds === 'data'
    ? 'When it is full, nothing can be entered any more.'
    : 'When it is full, no more backups are made.';
}
