import 'server-only';
import { resolve } from 'node:path';
import type { AnchorPlaceName } from '#data/records/anchors';
import { env } from '../env';
import { appendAnchors } from './places/append-anchors';
import { mailAnchors } from './places/mail-anchors';
import { postAnchors } from './places/post-anchors';

/** Somewhere else that anchors are kept. */
export interface AnchorPlace {
  place: AnchorPlaceName;
  /** What may be shown of it and kept for good: no person's mail address, no secret part of an address. */
  target: string;
  /** Sends lines of anchors there; throws when they were not taken. */
  send: (lines: string, day: string) => Promise<void>;
}

/** Every place that was named for this Holdfast; none when nothing was. */
export function anchorPlaces(): AnchorPlace[] {
  const said = env();
  const places: AnchorPlace[] = [];
  if (said.HOLDFAST_ANCHOR_FILE !== undefined) {
    const path = resolve(said.HOLDFAST_ANCHOR_FILE);
    places.push({ place: 'file', target: path, send: (lines) => appendAnchors(path, lines) });
  }
  if (said.HOLDFAST_ANCHOR_MAIL !== undefined) {
    const to = said.HOLDFAST_ANCHOR_MAIL;
    places.push({ place: 'mail', target: `…@${to.split('@')[1]}`, send: (lines, day) => mailAnchors(to, lines, day) });
  }
  if (said.HOLDFAST_ANCHOR_WEBHOOK !== undefined) {
    const { HOLDFAST_ANCHOR_WEBHOOK: url, HOLDFAST_ANCHOR_SECRET: secret } = said;
    places.push({
      place: 'webhook',
      target: new URL(url).host,
      send: (lines, day) => postAnchors({ url, secret }, lines, day),
    });
  }
  return places;
}
