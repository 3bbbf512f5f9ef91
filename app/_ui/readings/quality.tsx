import type { Quality } from '#core/readings/reading';
import { QUALITY_WORDS } from './words';
import style from './readings.module.css';

/** How far a reading can be trusted: a word, and a shape where it is not good. */
export function QualityMark({ quality, why }: { quality: Quality; why: string | null }) {
  if (quality === 'good') return <>{QUALITY_WORDS.good}</>;
  return (
    <>
      <span className={style.doubt}>
        <svg width="12" height="12" viewBox="-6 -6 12 12" aria-hidden="true" className={style.shape}>
          <path d={qualityPath(quality)} data-quality={quality} />
        </svg>
        {QUALITY_WORDS[quality]}
      </span>
      {why ? <span className={style.why}>{why}</span> : null}
    </>
  );
}

/** Shape of a reading that is not good, about its middle: an open diamond, or a cross. */
export function qualityPath(quality: Quality): string {
  return quality === 'bad' ? 'M-4-4L4 4M-4 4L4-4' : 'M0-4.5L4.5 0L0 4.5L-4.5 0Z';
}
