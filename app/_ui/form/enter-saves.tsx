/**
 * What the Enter key presses in a form whose first button to be seen says something else than "save what was typed": a
 * browser presses the first submit button, and this one, which nobody sees, stands before all others.
 */
export function EnterSaves() {
  return <button type="submit" hidden />;
}
