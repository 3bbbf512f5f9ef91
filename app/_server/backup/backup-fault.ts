import 'server-only';

/** Why a backup cannot be read or restored: its message is a whole sentence for the person at the keyboard. */
export class BackupFault extends Error {}
