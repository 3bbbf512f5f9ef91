import type { FaultCase } from './result';

/** The marks of a fault case in short, as a table bears them; empty without any. */
export function caseMarks(c: Pick<FaultCase, 'unsure' | 'optimistic' | 'outsideValidity' | 'bound'>): string {
  return [
    c.unsure ? 'unsure' : '',
    c.optimistic ? 'optimistic' : '',
    c.bound ? 'a bound' : '',
    c.outsideValidity ? 'outside validity' : '',
  ]
    .filter(Boolean)
    .join(', ');
}
