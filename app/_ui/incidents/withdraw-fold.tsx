import type { FormAction } from '../form/answer';
import { Fold } from '../frame/fold';
import type { HeadView } from './incident-view';
import { WithdrawForm } from './withdraw-form';

interface FoldProps {
  head: HeadView;
  id: string | undefined;
  entry: string;
  withdraw: FormAction<unknown>;
}

/** Behind its title, the form by which an entry is taken back. */
export function WithdrawFold(props: FoldProps) {
  return (
    <Fold title="Take back">
      <WithdrawForm {...props} />
    </Fold>
  );
}
