/** An instant to the minute, in UTC: an account belongs to no site, and so to no zone. */
export function Instant({ at }: { at: Date }) {
  const iso = at.toISOString();
  return <time dateTime={iso}>{`${iso.slice(0, 10)} ${iso.slice(11, 16)} UTC`}</time>;
}
