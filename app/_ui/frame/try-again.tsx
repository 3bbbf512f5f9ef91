import Link from './link';
import style from './try-again.module.css';

/** What to say when a page broke: it is ours to put right, nothing was lost, and by which id the log knows it. */
export function TryAgain({ id, again }: { id: string | undefined; again: () => void }) {
  return (
    <div className={style.broken}>
      <p>
        This is a fault of Holdfast, not of what you did. Nothing was changed.
        {id ? ` The log knows it as ${id}.` : ''}
      </p>
      <button type="button" onClick={again}>
        Try again
      </button>
      <Link href="/">To the systems</Link>
    </div>
  );
}
