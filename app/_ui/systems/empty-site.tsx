import Link from '../frame/link';
import { type DemoAction, LoadDemo } from './load-demo';
import style from './empty-site.module.css';

/**
 * What a newcomer sees: what Holdfast is, and three ways on.
 * @param loadDemo server action that loads the demo
 */
export function EmptySite({ loadDemo }: { loadDemo: DemoAction }) {
  return (
    <div className={style.empty}>
      <p className={style.what}>
        Describe a site’s life support, and Holdfast works out, fault by fault, which single failure would lose animals
        before anyone could put it right, and what to mend first.
      </p>
      <div className={style.ways}>
        <LoadDemo load={loadDemo} />
        <div>
          <Link className={style.second} href="/import">
            Import a facility file
          </Link>
          <p>Your own site, as JSON or YAML. You see what would change before anything is kept.</p>
        </div>
        <div>
          <Link className={style.second} href="/sites/new">
            Describe a site on screen
          </Link>
          <p>Without a file, piece by piece. What nobody knows yet may be left open.</p>
        </div>
      </div>
    </div>
  );
}
