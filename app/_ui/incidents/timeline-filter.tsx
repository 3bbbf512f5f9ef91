import topics from './topics.json';
import style from './incidents.module.css';

/** Which lines of the timeline are shown, and from how long before it began. Works without scripts. */
export function TimelineFilter({ hours, topics: chosen }: { hours: number; topics: readonly string[] }) {
  return (
    <form method="get" action="#timeline" className={style.filter}>
      <fieldset>
        <legend>Lines about</legend>
        {Object.entries(topics).map(([topic, name]) => (
          <label key={topic}>
            <input
              type="checkbox"
              name="show"
              value={topic}
              defaultChecked={chosen.length === 0 || chosen.includes(topic)}
            />
            {name}
          </label>
        ))}
      </fieldset>
      <label>
        Hours before it began <input type="number" name="hours" min={0} max={168} defaultValue={hours} />
      </label>
      <button type="submit">Show these</button>
    </form>
  );
}
