import type { ReactNode } from 'react';
import style from './section.module.css';

/**
 * A ruled section with its heading in the left margin, or above where it needs the whole width.
 * @param id anchor, unique on the page
 * @param note a line under the heading
 * @param wide the content takes the whole width
 */
export function Section({
  id,
  title,
  note,
  wide = false,
  children,
}: {
  id: string;
  title: string;
  note?: ReactNode;
  wide?: boolean;
  children: ReactNode;
}) {
  return (
    <section
      id={id}
      aria-labelledby={`${id}-title`}
      className={wide ? `${style.section} ${style.wide}` : style.section}
    >
      <div className={style.margin}>
        <h2 id={`${id}-title`}>{title}</h2>
        {note ? <div className={style.note}>{note}</div> : null}
      </div>
      <div className={style.content}>{children}</div>
    </section>
  );
}
