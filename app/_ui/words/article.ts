/** A word with its indefinite article: `a tank`, `an alarm`. */
export function withArticle(word: string): string {
  return `${/^[aeiou]/i.test(word) ? 'an' : 'a'} ${word}`;
}
