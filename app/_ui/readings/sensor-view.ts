import type { DerivedKind } from '#core/readings/derived/series';
import type { SeriesQuantity } from '#core/readings/figures';
import type { Origin, Quality } from '#core/readings/reading';
import type { Bucket, Span } from '#core/readings/spans';

/** A reading shown by itself. */
export interface PointView {
  atMs: number;
  there: string;
  value: number;
  quality: Quality;
  why: string | null;
  flag: string | null;
  origin: Origin;
}

/** Readings of a sensor over a span of time, in the facility file's unit. */
export interface SensorReadingsView {
  site: { key: string; name: string; zone: string };
  system: { key: string; name: string };
  sensor: { key: string; name: string; quantity: SeriesQuantity };
  derived: { kind: DerivedKind; from: { key: string; name: string }[] } | null;
  span: Span;
  days: { first: string; last: string; earlier: string; later: string | null };
  fromMs: number;
  toMs: number;
  buckets: Bucket[];
  gapMs: number;
  points: PointView[];
  pointCount: number;
  limits: { name: string; side: 'above' | 'below'; value: number }[];
  raised: { id: string; atMs: number; name: string; there: string }[];
  outside: { outsideS: number; heldS: number } | null;
  states: { state: string; fromMs: number; toMs: number | null; there: string; endedThere: string | null }[];
  rows: (Bucket & { there: string })[];
}
