import 'server-only';
import webpush from 'web-push';
import { findPushKeys, keepPushKeys, type PushKeys } from '#data/calls/push-keys';
import { now } from '../clock';

/**
 * The keys by which push services know this Holdfast (VAPID, RFC 8292). They are made when they are first asked for and kept:
 * with others, no browser that was ever added would take a call.
 */
export async function pushKeys(): Promise<PushKeys> {
  return (await findPushKeys()) ?? (await keepPushKeys(webpush.generateVAPIDKeys(), now()));
}
