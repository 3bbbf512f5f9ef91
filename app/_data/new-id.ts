import 'server-only';
import { v7 } from 'uuid';

/** @returns a UUIDv7: ids are minted here, not by the database, and sort by the time they were minted at */
export function newId(): string {
  return v7();
}
