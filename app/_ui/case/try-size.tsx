'use client';

import { type FormEvent, useId, useState, useTransition } from 'react';
import type { Facility } from '#core/facility/facility';
import type { FaultCase } from '#core/review/result';
import { judgementSentence } from '#core/review/words';
import type { Custom } from '#core/units/shown';
import { VerdictMark } from '../marks/verdict';
import { namesOf } from '../words/names';
import { outcomeSaid } from '../words/said';
import { judgedWithWatts } from './judged-with-watts';
import style from './try-size.module.css';

interface TrySizeProps {
  /** The site with this one system. */
  facility: Facility;
  caseId: string;
  /** The heater as it is, W. */
  ratedW: number;
  units: Custom;
  /** ISO date the tests are judged on. */
  on: string;
}

/** The same fault case with a heater of another size, worked out in the browser by the same model. */
export function TrySize({ facility, caseId, ratedW, units, on }: TrySizeProps) {
  const field = useId();
  const [watts, setWatts] = useState(String(ratedW));
  const [answer, setAnswer] = useState<{ watts: number; judged: FaultCase } | null>(null);
  const [isWorking, work] = useTransition();
  const asked = Number(watts);
  const isSize = Number.isFinite(asked) && asked >= 1 && asked <= 1e6;
  const tryIt = (event: FormEvent) => {
    event.preventDefault();
    if (isSize) work(() => setAnswer({ watts: asked, judged: judgedWithWatts(facility, caseId, asked, on) }));
  };
  return (
    <form onSubmit={tryIt} className={style.try}>
      <label htmlFor={field}>Rated power, W</label>
      <input id={field} inputMode="numeric" value={watts} onChange={(event) => setWatts(event.target.value)} />
      <button type="submit" disabled={!isSize || isWorking}>
        {isWorking ? 'Working it out…' : 'Work it out'}
      </button>
      <div role="status" className={style.answer}>
        {answer ? <Answer {...answer} facility={facility} units={units} /> : null}
      </div>
    </form>
  );
}

interface AnswerProps {
  watts: number;
  judged: FaultCase;
  facility: Facility;
  units: Custom;
}

function Answer({ watts, judged: { claimed }, facility, units }: AnswerProps) {
  const [system] = facility.systems;
  const [outcome] = claimed.outcomes;
  return (
    <p>
      With {watts} W, as claimed: <VerdictMark verdict={claimed.verdict} of={outcome?.harm.class} />.{' '}
      {outcome && system
        ? outcomeSaid({ units, names: namesOf(facility, system) }, outcome)
        : judgementSentence(claimed)}
    </p>
  );
}
