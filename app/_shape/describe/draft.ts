import type { Draft, DraftGroup } from '#core/forms/field';
import { z } from 'zod';

/** Longest form that is read, in characters. */
const LONGEST = 200_000;
/** Levels of groups and lists; a plan needs six. */
const DEEPEST = 12;

/** What was typed into a form, as the browser sends it: JSON of texts, lists and groups. */
export const draftText = z
  .string()
  .max(LONGEST)
  .transform((text, ctx): DraftGroup => {
    const held = parsed(text);
    if (isGroup(held) && isDraft(held, DEEPEST)) return held;
    ctx.issues.push({ code: 'custom', input: text, message: 'must be what a form of Holdfast sends' });
    return z.NEVER;
  });

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function isGroup(held: unknown): held is DraftGroup {
  return typeof held === 'object' && held !== null && !Array.isArray(held);
}

function isDraft(held: unknown, levels: number): held is Draft {
  if (typeof held === 'string') return true;
  if (typeof held !== 'object' || held === null || levels === 0) return false;
  // A browser's JSON names no prototype by accident.
  return !Object.hasOwn(held, '__proto__') && Object.values(held).every((part) => isDraft(part, levels - 1));
}
