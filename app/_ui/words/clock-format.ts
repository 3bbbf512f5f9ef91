const formats = new Map<string, Intl.DateTimeFormat>();

/**
 * A way to write moments down, made once: making one takes a hundred times as long as using it, and a page says dozens.
 *
 * @throws RangeError when there is no such zone
 */
export function clockFormat(locale: 'en-GB' | 'sv-SE', options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const key = `${locale} ${JSON.stringify(options)}`;
  const known = formats.get(key) ?? new Intl.DateTimeFormat(locale, options);
  formats.set(key, known);
  return known;
}
