/** How soon people answered alarms, as it was recorded: what the review may take instead of a guess. */

/** One alarm that called people, and what became of the call. */
export interface AnsweredAlarm {
  /** Whether somebody on site was among those called first; else somebody on call was. */
  isOnSite: boolean;
  /** Whether it was raised by night, when people are asleep. */
  isNight?: boolean;
  /** ms since 1970. */
  raisedMs: number;
  acknowledgedMs: number | null;
  returnedMs: number | null;
}

/** What was measured of one kind of duty. Minutes. */
export interface Answers {
  cases: number;
  /** Of them never acknowledged. */
  unanswered: number;
  medianMin: number;
  /** Tenth and ninetieth percentile. */
  lowMin: number;
  highMin: number;
}

/** What was measured of both kinds of duty: by day, and by night where that could be told apart. */
export interface MeasuredAnswers {
  onSite: Answers | null;
  onCall: Answers | null;
  night?: { onSite: Answers | null; onCall: Answers | null };
}

/** Cases from which on a measured figure is taken. Common practice, no source. */
const ENOUGH_CASES = 10;
/** Minutes an alarm counts as taking that nobody ever acknowledged: a day. */
const NEVER_MIN = 1440;

/**
 * What was measured of each kind of duty: minutes from the alarm being raised until somebody acknowledged, whoever it was in the
 * end. An alarm that went back to normal before that is left out, since it no longer asked for anybody; one that nobody ever
 * acknowledged counts as a day, so that the worst nights are not left out.
 *
 * @param nowMs   ms since 1970: what is still open and younger than a day is left out
 * @returns       null for a kind with too few cases
 */
export function answersOf(alarms: readonly AnsweredAlarm[], nowMs: number): MeasuredAnswers {
  const [site, call] = [true, false].map((isOnSite) =>
    byNight(
      alarms.filter((one) => one.isOnSite === isOnSite),
      nowMs,
    ),
  );
  const night = { onSite: site?.night ?? null, onCall: call?.night ?? null };
  const found = { onSite: site?.day ?? null, onCall: call?.day ?? null };
  return (night.onSite ?? night.onCall) ? { ...found, night } : found;
}

/** Day and night apart where there are enough cases of both, else all of them together. */
function byNight(alarms: readonly AnsweredAlarm[], nowMs: number): { day: Answers | null; night: Answers | null } {
  const of = (isNight: boolean) =>
    measured(
      alarms.filter((one) => (one.isNight ?? false) === isNight),
      nowMs,
    );
  const [day, night] = [of(false), of(true)];
  return day && night ? { day, night } : { day: measured(alarms, nowMs), night: null };
}

function measured(alarms: readonly AnsweredAlarm[], nowMs: number): Answers | null {
  const minutes = alarms.flatMap(({ raisedMs, acknowledgedMs, returnedMs }) => {
    if (returnedMs !== null && (acknowledgedMs === null || returnedMs < acknowledgedMs)) return [];
    if (acknowledgedMs !== null) return [Math.min(NEVER_MIN, (acknowledgedMs - raisedMs) / 60_000)];
    return nowMs - raisedMs >= NEVER_MIN * 60_000 ? [NEVER_MIN] : [];
  });
  if (minutes.length < ENOUGH_CASES) return null;
  const at = (share: number) => Math.ceil(percentile(minutes, share) ?? 0);
  return {
    cases: minutes.length,
    unanswered: minutes.filter((min) => min >= NEVER_MIN).length,
    medianMin: at(0.5),
    lowMin: at(0.1),
    highMin: at(0.9),
  };
}

/**
 * The value that a share of all do not exceed, by nearest rank: always one that was measured.
 *
 * @param share   0 to 1
 * @returns       null for no values
 */
export function percentile(values: readonly number[], share: number): number | null {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? null;
}
