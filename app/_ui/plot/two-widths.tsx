import type { ReactNode } from 'react';
import style from './two-widths.module.css';

/** Px of a drawing on a desk, and on a phone, so that its letters keep their size on both. */
export const DESK = 960;
const PHONE = 336;

/** A drawing made once for a desk and once for a phone; the style sheet shows one of them. */
export function TwoWidths({ draw, desk = DESK }: { draw: (width: number) => ReactNode; desk?: number }) {
  return (
    <>
      <div className={style.desk}>{draw(desk)}</div>
      <div className={style.phone}>{draw(PHONE)}</div>
    </>
  );
}
