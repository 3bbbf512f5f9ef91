'use client';

import { type QuietSpan, quietAt } from '#core/plans/quiet-at';
import { type ReactNode, useState } from 'react';
import { clock } from '../walk/device';
import { momentSaid } from '../words/moment';
import style from './rounds.module.css';

interface QuietGateProps {
  /** Quiet hours about the day; left out where the test may be run at any hour. */
  quiet: readonly QuietSpan[] | undefined;
  zone: string;
  children: ReactNode;
}

/** Before a loud test: says when it is to be quiet, and asks first where that is now. What is already run can be written down. */
export function QuietGate({ quiet, zone, children }: QuietGateProps) {
  const [stage, setStage] = useState<'before' | 'begun' | QuietSpan>('before');
  if (!quiet || quiet.length === 0 || stage === 'begun') return children;
  if (stage === 'before')
    return (
      <div className={style.form}>
        <p className={style.soft}>
          A loud test. It is to be quiet {quiet.map((span) => spanSaid(span, zone)).join('; ')}.
        </p>
        {/* The clock is read when it is begun: the page may have been open for hours. */}
        <button type="button" onClick={() => setStage(quietAt(quiet, clock()) ?? 'begun')}>
          Begin the test
        </button>
      </div>
    );
  return (
    <div role="alert" className={style.form}>
      <p className={style.warning}>
        <strong>It is to be quiet now</strong>, until {momentSaid(stage.to, zone)}
        {stage.why === undefined ? '' : `: ${stage.why}`}. Is this loud test to be run all the same?
      </p>
      <div className={style.buttons}>
        <button type="button" className={style.main} onClick={() => setStage('before')}>
          No, later
        </button>
        <button type="button" onClick={() => setStage('begun')}>
          Yes, all the same
        </button>
      </div>
    </div>
  );
}

function spanSaid({ from, to, why }: QuietSpan, zone: string): string {
  const said = `from ${momentSaid(from, zone)} to ${momentSaid(to, zone)}`;
  return why === undefined ? said : `${said} (${why})`;
}
