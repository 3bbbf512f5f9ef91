import type { Study } from './study';

/** The change to make first. */
export interface FirstFix {
  title: string;
  /** Fault cases that become less grave by it. */
  wins: number;
  /** Fault cases that stay open after it. */
  left: number;
}

/** The change to make first; null where there is no longer look, or nothing wins. */
export function firstFix(study: Study | null): FirstFix | null {
  const [next] = study?.fixFirst.order ?? [];
  const fix = study?.fixFirst.alone.find(({ id }) => id === next?.fix);
  return fix && next ? { title: fix.title, wins: next.wins, left: next.left } : null;
}
