'use client';

import Link from './link';
import { usePathname } from 'next/navigation';
import style from './masthead.module.css';

const PLACES = [
  { href: '/', name: 'Systems', under: '/sites' },
  { href: '/import', name: 'Import', under: '/import' },
  { href: '/how', name: 'How this is computed', under: '/how' },
  { href: '/almanac', name: 'Almanac', under: '/almanac' },
] as const;

/** The pages, with the one being read marked. */
export function Nav() {
  const path = usePathname();
  return (
    <nav aria-label="Pages">
      <ul className={style.nav}>
        {PLACES.map(({ href, name, under }) => (
          <li key={href}>
            <Link href={href} aria-current={path === href ? 'page' : path.startsWith(`${under}/`) ? 'true' : undefined}>
              {name}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
