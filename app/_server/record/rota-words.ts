import 'server-only';
import type { ChangeEvent } from '#core/rota/change';
import type { Said, Words } from './entry-words';

/** What comes of leave and swaps, in words. */
const CAME: Readonly<Record<ChangeEvent, string>> = {
  agreed: 'Agreed to take over, by the swap with',
  declined: 'Declined to take over, by the swap with',
  approved: 'Approved',
  refused: 'Refused',
  withdrawn: 'Withdrew',
  'taken-back': 'Took back',
};

function came(event: ChangeEvent): Words {
  const isOfBoth = event === 'agreed' || event === 'declined';
  return {
    title: `leave or swap ${event.replace('-', ' ')}`,
    tell: ({ text, name }: Said) =>
      isOfBoth ? `${CAME[event]} ${name('person')}` : `${CAME[event]} the ${text('of')} of ${name('person')}`,
  };
}

/** Leave and swaps of the rota, in words. */
export const ROTA_WORDS: Readonly<Record<string, Words>> = {
  'leave-asked': {
    title: 'leave asked for',
    tell: ({ text, name }) => `Asked for leave of ${name('person')} from ${text('from')} to ${text('to')}`,
  },
  'swap-asked': {
    title: 'swap asked for',
    tell: ({ text, name, has }) =>
      `Asked that ${name('takes')} take the turn of ${name('person')} that begins on ${text('date')}${has('from') ? `, from ${text('from')} to ${text('to')}` : ''}${has('backDate') ? `, for one of theirs on ${text('backDate')}` : ''}`,
  },
  'duty-change-agreed': came('agreed'),
  'duty-change-declined': came('declined'),
  'duty-change-approved': came('approved'),
  'duty-change-refused': came('refused'),
  'duty-change-withdrawn': came('withdrawn'),
  'duty-change-taken-back': came('taken-back'),
};
