/** What somebody is told of, as the webhook names it, and when that is. */
export const MESSAGE_TYPES = {
  'alarm.call': 'an alarm that nobody has acknowledged',
  'alarm.test': 'a test of the way to somebody, which they answer on the page',
  'state.call': 'an operating state that nobody has ended at its end',
  'call-out.reminder': 'somebody who went in alone: they themselves, a few minutes before their time is over',
  'call-out.overdue': 'somebody who went in alone and has not said that they are back: others are to look for them',
} as const;
export type MessageType = keyof typeof MESSAGE_TYPES;
