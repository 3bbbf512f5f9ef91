import 'server-only';
import type { DemoSignIn } from '#server/accounts/demo-people';

/** How the people of the demonstration sign in, a line each; how to get new passwords when these were said before. */
export function demoPeopleWords(people: readonly DemoSignIn[]): string {
  if (people.length === 0)
    return 'Its people were told how they sign in: `npm run -s account -- demo` gives them new passwords.\n';
  const lines = people.map(({ role, email, password }) => `  ${role.padEnd(9)} ${email.padEnd(22)} ${password}`);
  return `Who may sign in to the demonstration (said once):\n${lines.join('\n')}\n`;
}
