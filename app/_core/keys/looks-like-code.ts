/**
 * What this room knows: how a text that would open a lock gives itself away.
 * What it leaves out: who has which key, which people say.
 * Where the numbers come from: common practice, no source.
 */

/** Four figures or more, also with single signs between them: how locks and alarms are opened. */
const FIGURES = /\d(?:[ .\-/_]?\d){3,}/;
/** A word for such a thing, with any figure near it. */
const WORD = /\b(?:code|pin|passcode|password|combination|combo|keypad|kennwort|zahlenschloss|geheimzahl)\b/i;

/**
 * Whether a text looks like what opens a lock without a key. Such a thing is written down nowhere: whoever reads this page could
 * come in. It errs towards refusing.
 */
export function looksLikeCode(text: string): boolean {
  return FIGURES.test(text) || (WORD.test(text) && /\d/.test(text));
}
