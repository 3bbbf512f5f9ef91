/**
 * How often something happens, of its order of magnitude: "about once in 30 years".
 *
 * @param perYear   times a year, above 0; 0 is never
 */
export function perYearSaid(perYear: number): string {
  if (!(perYear > 0)) return 'never, by the rates entered';
  if (perYear >= 1.5) return `about ${rounded(perYear)} times a year`;
  const years = rounded(1 / perYear);
  return years <= 1 ? 'about once a year' : `about once in ${years.toLocaleString('en-GB')} years`;
}

/** To one significant figure: more would claim to be known. */
function rounded(value: number): number {
  return Number(value.toPrecision(1));
}
