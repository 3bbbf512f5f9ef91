/** How a verdict comes about, in the order in which it is computed. */
export function Method() {
  return (
    <ol>
      <li>
        <b>The water.</b> Every tank and the sump is a node with its own volume, temperature, salt and dissolved oxygen.
        The return shares its flow among the tanks and gravity brings it back; with the return stopped, they part. Heat,
        evaporation, levels, drain-down, overflow and oxygen follow the laws below. Every crossing of a limit is found
        in time, never stepped over.
      </li>
      <li>
        <b>The plan.</b> Equipment does what its plan says, in fixed layers: hard-wired cut-out, safety interlock,
        action on lost sensing, operating state, regulation. Only what a device carries out is credited as automatic.
      </li>
      <li>
        <b>The fault.</b> One failure mode of one thing begins in one operating state, from every hour of the day that
        makes a difference, and runs for seven days with nobody coming.
      </li>
      <li>
        <b>The harm.</b> A limit of the tolerance profile held for its time, water on the floor, or a return pump that
        draws air.
      </li>
      <li>
        <b>The last chance.</b> The latest moment at which putting everything right still avoids the harm, found by
        running it again, not by reading off the moment of harm: water takes time to turn.
      </li>
      <li>
        <b>The people.</b> Time to notice is the first alarm that reaches somebody, or the next round on which it shows.
        Time to put right adds answer, travel and repair, for each of the 168 hours of the week. Time to spare is last
        chance less time to put right.
      </li>
      <li>
        <b>Two columns.</b> As claimed counts on every safeguard that is not off. As tested counts only on those whose
        last test worked and is no older than its interval.
      </li>
      <li>
        <b>Unsure.</b> Everything is computed again with each uncertain input at the end of its plausible range that is
        bad for the harm; when that changes the verdict, it is marked.
      </li>
    </ol>
  );
}
