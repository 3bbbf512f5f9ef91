/** Words as they begin a line, the first letter large; pH has a way of its own to be written. */
export function capital(words: string): string {
  return words.startsWith('pH') ? words : words.charAt(0).toUpperCase() + words.slice(1);
}
