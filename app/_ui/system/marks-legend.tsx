/** What the marks of fault cases mean. */
export function MarksLegend() {
  return (
    <p>
      <i>Unsure</i>: the plausible range of the inputs would change the verdict. <i>Optimistic</i>: a tank stands
      without movement, so that a model of mixed water flatters it. <i>A bound</i>: nothing is reckoned to use up an
      oxidant that comes in. <i>Outside validity</i>: a formula was used beyond its published range.
    </p>
  );
}
