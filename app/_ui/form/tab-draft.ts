import type { Draft, Drafting } from './half-typed';

/** Keeps what is half-typed for as long as the tab of the browser is open, and shows it to nobody else. @param name of the form, and whose */
export function tabDrafting(...name: string[]): Drafting {
  const key = JSON.stringify(['holdfast-draft', ...name]);
  return {
    before: () => {
      try {
        return (JSON.parse(sessionStorage.getItem(key) ?? 'null') as Draft | null) ?? undefined;
      } catch {
        return undefined;
      }
    },
    keep: (draft) => {
      try {
        if (draft && Object.values(draft.fields).some((text) => text !== ''))
          sessionStorage.setItem(key, JSON.stringify(draft));
        else sessionStorage.removeItem(key);
      } catch {
        // A browser that keeps nothing loses what is half-typed when its page is left, as ever.
      }
    },
  };
}
