/** By which ways people are called, and what each can do. */

export const CHANNELS = ['mail', 'push', 'webhook'] as const;
export type Channel = (typeof CHANNELS)[number];

/** What a way is called, and what it can and cannot do: whether it wakes anybody, in a plain sentence. */
export const CHANNEL_WORDS: Readonly<Record<Channel, { name: string; can: string; taken: string }>> = {
  mail: {
    name: 'e-mail',
    can: 'Quiet: it arrives within seconds to minutes and wakes nobody unless their telephone is set to ring for it.',
    taken: 'the mail server took it',
  },
  push: {
    name: 'browser push',
    can: 'Quiet to medium: it shows and sounds as this device does for any message, and not while the device is muted, off or without network.',
    taken: 'the push service took it',
  },
  webhook: {
    name: 'webhook',
    can: 'As loud as the service behind it: one that rings telephones until somebody answers wakes people, one that writes to a group does not.',
    taken: 'the service behind the webhook took it',
  },
};
