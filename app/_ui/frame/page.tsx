import Link from './link';
import type { ReactNode } from 'react';
import style from './page.module.css';

/** One place on the way to a page. */
export interface Place {
  href: string;
  name: string;
}

/**
 * The body of a page under its heading.
 * @param over where it stands: the pages above it, outermost first
 * @param lead what the page says in a sentence or two
 */
export function Page({
  title,
  over,
  lead,
  children,
}: {
  title: ReactNode;
  over?: Place[];
  lead?: ReactNode;
  children: ReactNode;
}) {
  return (
    <main id="content" className={style.page}>
      {over ? (
        <nav aria-label="Above this page" className={style.over}>
          {over.map(({ href, name }) => (
            <span key={href}>
              <Link href={href}>{name}</Link>
            </span>
          ))}
        </nav>
      ) : null}
      <h1>{title}</h1>
      {lead ? <div className={style.lead}>{lead}</div> : null}
      {children}
    </main>
  );
}
