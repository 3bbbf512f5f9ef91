'use server';

import { addPasskey, addPasskeyShape, offerPasskey, offerPasskeyShape } from '#server/accounts/add-passkey';
import { changePassword, changePasswordShape } from '#server/accounts/change-password';
import {
  endOtherSessions,
  endOtherSessionsShape,
  endOwnSession,
  endOwnSessionShape,
} from '#server/accounts/end-sessions';
import { namePasskey, namePasskeyShape, removePasskey, removePasskeyShape } from '#server/accounts/passkeys';
import { addDevice, addDeviceShape, removeDevice, removeDeviceShape } from '#server/calls/devices';
import { act } from '#server/gate/act';

export const changePasswordAction = act(changePasswordShape, changePassword, () => ['/account']);
export const endSessionAction = act(endOwnSessionShape, endOwnSession, () => ['/account'], { always: true });
export const endOthersAction = act(endOtherSessionsShape, endOtherSessions, () => ['/account'], { always: true });
export const offerPasskeyAction = act(offerPasskeyShape, offerPasskey);
export const addPasskeyAction = act(addPasskeyShape, addPasskey, () => ['/account']);
export const namePasskeyAction = act(namePasskeyShape, namePasskey, () => ['/account']);
export const removePasskeyAction = act(removePasskeyShape, removePasskey, () => ['/account'], { always: true });
export const addDeviceAction = act(addDeviceShape, addDevice, () => ['/account']);
export const removeDeviceAction = act(removeDeviceShape, removeDevice, () => ['/account'], { always: true });
