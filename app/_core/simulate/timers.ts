/** Something that happens at a known time unless it has lost its meaning by then. */
export interface Timer {
  atS: number;
  /** Checked when due: false means that what started it is over. */
  live: () => boolean;
  fire: () => void;
  /** A single turning point ahead (fuel, battery, end of a state): a run must not be cut short before it. */
  turning: boolean;
  /** Only there so that regulation is asked again at its time. */
  wakes?: true;
}

/** Timers in no particular order; there are few. */
export type Timers = Timer[];

/** Time of the next live timer, seconds, or Infinity. Dead ones are dropped. */
export function nextTimer(timers: Timers): number {
  let next = Number.POSITIVE_INFINITY;
  for (let i = timers.length - 1; i >= 0; i--) {
    const timer = timers[i] as Timer;
    if (!timer.live()) timers.splice(i, 1);
    else if (timer.atS < next) next = timer.atS;
  }
  return next;
}

/** Fire every live timer due at or before t; true if any fired. */
export function fireDue(timers: Timers, t: number): boolean {
  const due = timers.filter((timer) => timer.atS <= t).sort((a, b) => a.atS - b.atS);
  for (const timer of due) timers.splice(timers.indexOf(timer), 1);
  let any = false;
  for (const timer of due) {
    if (!timer.live()) continue;
    timer.fire();
    any = true;
  }
  return any;
}
