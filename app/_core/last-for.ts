/**
 * Remembers what was last made for an owner, for as long as there is the owner: worked out once while a page is looked at again
 * and again. What is made must follow from the owner and the causes alone, and none of them may be changed in place.
 *
 * @returns   asks for what follows from an owner and causes; it is made where another was made last. Causes are the same when
 *            they are the same value or object
 */
export function lastFor<V>(): (owner: object, causes: readonly unknown[], make: () => V) => V {
  const last = new WeakMap<object, { causes: readonly unknown[]; made: V }>();
  return (owner, causes, make) => {
    const known = last.get(owner);
    if (known?.causes.length === causes.length && causes.every((cause, i) => Object.is(cause, known.causes[i])))
      return known.made;
    const made = make();
    last.set(owner, { causes, made });
    return made;
  };
}
