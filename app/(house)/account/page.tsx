import { getAccount, getAccountShape } from '#server/accounts/get-account';
import { ask } from '#server/gate/ask';
import { AccountPage as OwnAccountPage } from '#ui/account/account-page';
import { answered } from '../view/answered';
import {
  addDeviceAction,
  addPasskeyAction,
  changePasswordAction,
  endOthersAction,
  endSessionAction,
  namePasskeyAction,
  offerPasskeyAction,
  removeDeviceAction,
  removePasskeyAction,
} from './actions';

const askAccount = ask(getAccountShape, getAccount);

export const metadata = { title: 'Your account' };

export default async function AccountPage() {
  const account = answered(await askAccount(undefined));
  const actions = {
    changePassword: changePasswordAction,
    endSession: endSessionAction,
    endOthers: endOthersAction,
    offerPasskey: offerPasskeyAction,
    addPasskey: addPasskeyAction,
    namePasskey: namePasskeyAction,
    removePasskey: removePasskeyAction,
    addDevice: addDeviceAction,
    removeDevice: removeDeviceAction,
  };
  return <OwnAccountPage account={account} actions={actions} />;
}
