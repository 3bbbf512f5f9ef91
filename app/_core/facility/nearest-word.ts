/**
 * The known word that a mistyped one most likely meant.
 *
 * @param word  what was written
 * @param known words that would have been right
 * @returns the nearest known word within a third of its letters (at least two; one in three letters), ignoring case, or
 *          one that begins like it to the end of the shorter (at least four letters); null when none is near
 */
export function nearestWord(word: string, known: Iterable<string>): string | null {
  let best: string | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const candidate of known) {
    const [one, other] = [word.toLowerCase(), candidate.toLowerCase()];
    const far = editDistance(one, other);
    const near = far <= slipsIn(candidate);
    if (far < least && (near || beginsAlike(one, other))) {
      best = candidate;
      least = far;
    }
  }
  return best;
}

function slipsIn({ length }: string): number {
  return length < 4 ? Math.floor(length / 2) : Math.max(2, Math.floor(length / 3));
}

function beginsAlike(one: string, other: string): boolean {
  return Math.min(one.length, other.length) >= 4 && (one.startsWith(other) || other.startsWith(one));
}

/** Fewest single-letter insertions, deletions and replacements (Levenshtein) that turn one word into the other. */
function editDistance(from: string, to: string): number {
  let row = Array.from({ length: to.length + 1 }, (_, at) => at);
  for (let i = 1; i <= from.length; i++) {
    const next = [i];
    for (let j = 1; j <= to.length; j++) {
      const replaced = (row[j - 1] ?? 0) + (from[i - 1] === to[j - 1] ? 0 : 1);
      next.push(Math.min(replaced, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[to.length] ?? 0;
}
