import type { Moment } from '#core/review/trajectory';
import style from './moment.module.css';

const OUTLINES: Record<Moment['kind'], string> = {
  begins: 'M-5-6V7M-5-6 6-2.5-5 1',
  noticed: 'M-6-5H6L0 6Z',
  'last-chance': 'M-5-6H5L-5 6H5Z',
  'put-right': 'M-6 0a6 6 0 1 0 12 0a6 6 0 1 0-12 0M-3 0l2 2.5 4-5',
  harm: 'M0-7 7 0 0 7-7 0ZM-2.5-2.5l5 5M-2.5 2.5l5-5',
  event: 'M0-2a2 2 0 1 0 .1 0',
};

/** The shape of a moment in the course of a fault, about a point; always beside its word. */
export function MomentShape({ kind, x, y }: { kind: Moment['kind']; x: number; y: number }) {
  return <path className={style.shape} data-moment={kind} d={OUTLINES[kind]} transform={`translate(${x} ${y})`} />;
}
