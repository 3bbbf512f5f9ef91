import Link from 'next/link';
import type { ReactNode } from 'react';
import { Emblem } from './emblem';
import style from './masthead.module.css';
import { Nav } from './nav';

/**
 * The head of every page: the name, the way to the other pages, and what stands at its right end.
 * @param children the person's choices of units and light
 */
export function Masthead({ children }: { children?: ReactNode }) {
  return (
    <header className={style.masthead}>
      <a className={style.skip} href="#content">
        To the content
      </a>
      <Link className={style.name} href="/">
        <Emblem />
        Holdfast
      </Link>
      <Nav />
      <div className={style.choices}>{children}</div>
    </header>
  );
}
