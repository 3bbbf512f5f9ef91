import type { FirstFix } from '#core/review/first-fix';

/** The change to make first, with what it wins and what stays open. */
export function firstFixSaid({ title, wins, left }: FirstFix): string {
  return `${title}. It wins ${wins} fault ${wins === 1 ? 'case' : 'cases'}; ${left} ${left === 1 ? 'stays' : 'stay'} open.`;
}
