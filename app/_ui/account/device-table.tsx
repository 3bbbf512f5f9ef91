import type { FormAction } from '../form/answer';
import { PersonForm } from '../sign-in/person-form';
import { type Column, Ledger } from '../table/ledger';
import { Instant } from './instant';

/** A browser of one's own that takes calls. */
export interface Device {
  id: string;
  name: string;
  madeAt: Date;
  takenAt: Date | null;
}

/** One's browsers that take calls. @param remove removes one */
export function DeviceTable({ devices, remove }: { devices: Device[]; remove: FormAction<unknown> }) {
  if (devices.length === 0) return <p>None yet: alarms reach you by e-mail, and by a webhook where a site has one.</p>;
  const columns: Column<Device>[] = [
    { id: 'name', head: 'Name', cell: ({ name }) => name },
    { id: 'added', head: 'Added', cell: ({ madeAt }) => <Instant at={madeAt} /> },
    {
      id: 'taken',
      head: 'Last message taken',
      cell: ({ takenAt }) => (takenAt === null ? 'none yet' : <Instant at={takenAt} />),
    },
    {
      id: 'change',
      head: 'Change',
      cell: ({ id, name }) => <PersonForm send={remove} hidden={{ id }} button={`Remove ${name}`} look="plain" />,
    },
  ];
  return <Ledger caption="In the order they were added" columns={columns} rows={devices} keyOf={({ id }) => id} />;
}
