import type { ReactNode } from 'react';
import style from './machine.module.css';

/** One line: what it is, and how it stands. */
export interface Fact {
  name: string;
  value: ReactNode;
  /** Somebody should look at it; a mark and colour say so besides the words. */
  isAbnormal?: boolean;
}

/** Facts under one another, ruled like a log. */
export function Facts({ facts }: { facts: Fact[] }) {
  return (
    <dl className={style.facts}>
      {facts.map(({ name, value, isAbnormal = false }) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd className={isAbnormal ? style.abnormal : undefined}>{value}</dd>
        </div>
      ))}
    </dl>
  );
}
