/** Zones by the letters that files write: differences from UTC that hold all year. One that two places use is left out. */
const LETTERS: Readonly<Record<string, string>> = {
  utc: 'UTC',
  gmt: 'UTC',
  wez: 'UTC',
  mez: '+01:00',
  cet: '+01:00',
  mesz: '+02:00',
  cest: '+02:00',
  oez: '+02:00',
  eet: '+02:00',
  edt: '-04:00',
  cdt: '-05:00',
  mst: '-07:00',
  mdt: '-06:00',
  pst: '-08:00',
  pdt: '-07:00',
  akst: '-09:00',
  hst: '-10:00',
  jst: '+09:00',
  aedt: '+11:00',
  aest: '+10:00',
  acst: '+09:30',
  awst: '+08:00',
  nzst: '+12:00',
  nzdt: '+13:00',
};

const DIFFERENCE = /\b(?:UTC|GMT)\s*([+\-\u2212])\s*(\d{1,2})(?::?(\d{2}))?\b/i;

/**
 * The zone that a header or what stands above it speaks of: «GMT-04:00», «MEZ».
 *
 * @param texts   the name of the time's column first, then the lines above the header
 * @returns       a difference from UTC, or null when none of them says one
 */
export function zoneSaid(texts: readonly string[]): string | null {
  for (const text of texts) {
    const found = DIFFERENCE.exec(text);
    if (found) return difference(found[1] ?? '+', found[2] ?? '0', found[3] ?? '00');
    const letters = text
      .match(/\b[A-Za-z]{3,4}\b/g)
      ?.find((word) => word === word.toUpperCase() && named(word) !== null);
    if (letters) return named(letters);
  }
  return null;
}

function named(word: string): string | null {
  const key = word.toLowerCase();
  return Object.hasOwn(LETTERS, key) ? (LETTERS[key] ?? null) : null;
}

function difference(sign: string, hours: string, minutes: string): string | null {
  if (Number(hours) > 14 || Number(minutes) > 59) return null;
  if (Number(hours) + Number(minutes) === 0) return 'UTC';
  return `${sign === '+' ? '+' : '-'}${hours.padStart(2, '0')}:${minutes}`;
}
