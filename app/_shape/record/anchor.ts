import { z } from 'zod';

/** First word of every line of a file of anchors. */
const FORMAT = 'holdfast.anchor/1';
/** Last number of a link that the database can count to. */
const LAST = 2_147_483_647;
const SEQ = `the link must be a whole number from 1 to ${LAST}`;

/**
 * Where the record of a site stood at an instant, to be kept elsewhere: whoever rewrites the record and seals it anew
 * cannot rewrite this as well.
 */
export const anchor = z.object({
  /** Id of the site. */
  site: z.uuid({ error: 'the site must be a UUID' }),
  /** Number of its last link then, from 1. */
  seq: z.preprocess(
    (said) => (typeof said === 'string' && /^\d+$/.test(said) ? Number(said) : said),
    z.int({ error: SEQ }).min(1, { error: SEQ }).max(LAST, { error: SEQ }),
  ),
  /** Seal of that link: 64 hexadecimal digits. */
  seal: z.string().regex(/^[0-9a-f]{64}$/, { error: 'the seal must be 64 hexadecimal digits' }),
  /** Instant at which it was written down. */
  at: z.iso.datetime({ error: 'the instant must be written like 2026-11-25T06:00:00Z' }),
});

export type Anchor = z.output<typeof anchor>;

/** A line of a file of anchors that cannot be read. */
export interface AnchorFault {
  /** From 1. */
  line: number;
  message: string;
}

/**
 * Reads a file of anchors, one a line; empty lines are passed over.
 *
 * @param text   the whole file
 * @returns      every anchor that can be read, in order, and a fault for every line that cannot
 */
export function readAnchors(text: string): { anchors: Anchor[]; faults: AnchorFault[] } {
  const anchors: Anchor[] = [];
  const faults: AnchorFault[] = [];
  for (const [at, line] of text.split(/\r?\n/).entries()) {
    const words = line.trim().split(/\s+/);
    if (words[0] === '') continue;
    const [format, site, seq, seal, instant] = words;
    const parsed = anchor.safeParse({ site, seq, seal, at: instant });
    if (format !== FORMAT || words.length !== 5)
      faults.push({ line: at + 1, message: `not an anchor: five words, the first of them ${FORMAT}` });
    else if (parsed.success) anchors.push(parsed.data);
    else faults.push({ line: at + 1, message: parsed.error.issues.map(({ message }) => message).join('; ') });
  }
  return { anchors, faults };
}

/** An anchor as one line of a file, with its line end. */
export function writeAnchor({ site, seq, seal, at }: Anchor): string {
  return `${[FORMAT, site, seq, seal, at].join(' ')}\n`;
}
