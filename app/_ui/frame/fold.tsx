import type { ReactNode } from 'react';
import style from './fold.module.css';

/** What most people need not read at first, behind its title. Opens without scripts; printed open. */
export function Fold({ title, children }: { title: ReactNode; children: ReactNode }) {
  return (
    <details className={style.fold}>
      <summary>{title}</summary>
      <div className={style.inside}>{children}</div>
    </details>
  );
}
