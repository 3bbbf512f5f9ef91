import { Section } from '../frame/section';
import { instantSaid } from '../words/instant';
import type { CallOutView } from './call-outs-view';
import style from './call-outs.module.css';

/** Who was in alone, newest first. @param zone IANA zone of the site */
export function PastCallOuts({ past, zone }: { past: readonly CallOutView[]; zone: string }) {
  if (past.length === 0) return null;
  return (
    <Section id="past" title="Before">
      <ol className={style.past}>
        {past.map((one) => (
          <li key={one.id}>
            <b>{instantSaid(one.begunAt, zone)}</b> {one.name}, {one.place}. Back{' '}
            {one.backAt === null ? '' : instantSaid(one.backAt, zone)}
            {one.backBy === null || one.backBy === one.name ? '' : `, by the word of ${one.backBy}`}
            {one.note === null ? '' : `: ${one.note}`}
            {one.called.length === 0 ? '' : `. Called: ${one.called.join(', ')}`}
          </li>
        ))}
      </ol>
    </Section>
  );
}
