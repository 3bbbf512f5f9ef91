import Link from './link';
import type { ReactNode } from 'react';
import { Emblem } from './emblem';
import style from './masthead.module.css';
import { Nav } from './nav';

/**
 * The head of every page: the name, the way to the other pages, and what stands at its right end.
 * @param isOpen of a page for those who are not signed in: there are no others to go to
 * @param isDemo something on the pages is of the demonstration
 * @param children who is signed in, and the person's choices of units and light
 */
export function Masthead({
  isOpen = false,
  isDemo = false,
  children,
}: {
  isOpen?: boolean;
  isDemo?: boolean;
  children?: ReactNode;
}) {
  return (
    <header className={style.masthead}>
      <a className={style.skip} href="#content">
        To the content
      </a>
      <Link className={style.name} href="/">
        <Emblem />
        Holdfast
      </Link>
      {isDemo ? (
        <span className={style.demo} title="A site that you see here is invented: nothing of it is real.">
          Demonstration
        </span>
      ) : null}
      {isOpen ? null : <Nav />}
      <div className={style.choices}>{children}</div>
    </header>
  );
}
