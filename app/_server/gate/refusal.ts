import 'server-only';

/** One thing that is wrong with what was sent, and where. */
export interface Fault {
  /** Field, or place in a file such as `systems[2].room`; empty for the whole. */
  path: string;
  /** In plain words. */
  message: string;
  /** Place in a file, counted from 1. */
  line?: number;
  column?: number;
}

/** What can be missing. */
export type Sought =
  | 'site'
  | 'system'
  | 'fault case'
  | 'review'
  | 'thing'
  | 'piece of equipment'
  | 'version'
  | 'person'
  | 'safeguard'
  | 'test'
  | 'round'
  | 'line of the sheet'
  | 'sheet'
  | 'draft of the sheet'
  | 'incident'
  | 'entry'
  | 'action'
  | 'alarm'
  | 'link'
  | 'source'
  | 'topic'
  | 'name'
  | 'session'
  | 'passkey'
  | 'account'
  | 'state'
  | 'signature'
  | 'handover'
  | 'notice'
  | 'watch'
  | 'calendar'
  | 'sensor'
  | 'layout'
  | 'page';

/**
 * Why something asked for is not done. The list is closed: a use case picks from it and adds none of its own.
 * What a person may not see is not found; what they see and may not do is not allowed.
 */
export type Refusal =
  | { why: 'not-signed-in' }
  | { why: 'not-allowed' }
  /** It is their own work, which somebody else has to look at; or somebody else's, which only they may change. */
  | { why: 'own-work' }
  | { why: 'not-own-work' }
  /** Address and password, or passkey, do not belong together; it is not said which of them is wrong. */
  | { why: 'wrong-sign-in' }
  /** Asked too often; s until it may be asked again, or null when it may not, until the password is a new one. */
  | { why: 'too-often'; waitS: number | null }
  | { why: 'not-found'; what: Sought }
  | { why: 'invalid'; faults: Fault[] }
  /** Somebody else was quicker; `now` says in words what it has become. */
  | { why: 'conflict'; now: string }
  | { why: 'too-late' }
  /** The disk takes nothing more: whatever is to be changed is refused, and reading goes on. */
  | { why: 'no-room' };
