import type { Standing } from '#core/rounds/due';
import style from './rounds.module.css';

const SHAPES: Record<Standing, string> = { ahead: '', due: '○', begun: '◐', late: '▲', missed: '✕', done: '✓' };

/** How a round stands: a shape and a word; only what is late or missed has a colour. */
export function StandingMark({ standing }: { standing: Standing }) {
  const isWrong = standing === 'late' || standing === 'missed';
  const shape = SHAPES[standing];
  return (
    <>
      {shape === '' ? null : (
        <span aria-hidden="true" className={isWrong ? style.wrong : style.shape}>
          {shape}
        </span>
      )}{' '}
      {isWrong ? <strong>{standing}</strong> : standing}
    </>
  );
}
