import type { ReactNode } from 'react';
import style from './fold.module.css';

/**
 * What most people need not read at first, behind its title. Opens without scripts; printed open.
 * @param open it has to be seen: it opens by itself
 */
export function Fold({ title, open, children }: { title: ReactNode; open?: boolean; children: ReactNode }) {
  return (
    <details className={style.fold} open={open || undefined}>
      <summary>{title}</summary>
      <div className={style.inside}>{children}</div>
    </details>
  );
}
