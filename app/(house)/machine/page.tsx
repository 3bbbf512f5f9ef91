import type { Metadata } from 'next';
import { ask } from '#server/gate/ask';
import { getMachine, getMachineShape } from '#server/machine/get-machine';
import { MachineBody } from '#ui/machine/machine-body';
import { answered } from '../view/answered';

const askMachine = ask(getMachineShape, getMachine);

export const metadata: Metadata = { title: 'Machine' };

export default async function MachinePage() {
  return <MachineBody machine={answered(await askMachine(undefined))} />;
}
