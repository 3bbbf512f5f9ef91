/** ms between two times that a page is fetched anew, however much changes; longer where only readings came. */
const PAUSE_MS = 500;
const READINGS_PAUSE_MS = 3000;
/** ms after which a page is fetched anew though nothing was heard: what it says of ages and of what is due grows old. */
const OLD_MS = 60_000;
/** ms after which a browser that gave up comes back. */
const COME_BACK_MS = 5000;

/** What is done with what is heard. */
interface Told {
  refresh: () => void;
  live: (isLive: boolean) => void;
}

/**
 * Hears of changes at a site while the page is looked at.
 *
 * @param address   of the stream
 * @param wanted    words of what the page shows
 * @param told      what to do
 * @returns         how to stop
 */
export function watchSite(address: string, wanted: readonly string[], told: Told) {
  let source: EventSource | null = null;
  let comingBack: ReturnType<typeof setTimeout> | undefined;
  const refresh = atMostEvery(PAUSE_MS, told.refresh);
  const refreshReadings = atMostEvery(READINGS_PAUSE_MS, refresh.now);
  const growingOld = setInterval(() => {
    if (!document.hidden) refresh.now();
  }, OLD_MS);
  const open = () => {
    const opened = new EventSource(address);
    source = opened;
    opened.addEventListener('open', () => told.live(true));
    opened.addEventListener('news', ({ data }) => {
      const heard = String(data).split(' ');
      const shown = wanted.filter((word) => heard.includes(word));
      if (shown.some((word) => word !== 'readings')) refresh.now();
      else if (shown.length > 0) refreshReadings.now();
    });
    opened.addEventListener('error', () => {
      told.live(false);
      // A browser comes back by itself after a break, and not after a refusal: the page then leads to where one signs in.
      if (opened.readyState !== EventSource.CLOSED) return;
      refresh.now();
      comingBack = setTimeout(open, COME_BACK_MS);
    });
  };
  const close = () => {
    clearTimeout(comingBack);
    source?.close();
    source = null;
  };
  // Browsers keep few connections to one place: pages in the background must not hold them all.
  const turn = () => {
    if (document.hidden) close();
    else if (source === null) open();
  };
  if (!document.hidden) open();
  document.addEventListener('visibilitychange', turn);
  return {
    stop: () => {
      document.removeEventListener('visibilitychange', turn);
      clearInterval(growingOld);
      refresh.stop();
      refreshReadings.stop();
      close();
    },
  };
}

function atMostEvery(pauseMs: number, work: () => void) {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let again = false;
  const now = () => {
    if (timer !== undefined) {
      again = true;
      return;
    }
    work();
    timer = setTimeout(() => {
      timer = undefined;
      if (again) now();
      again = false;
    }, pauseMs);
  };
  return { now, stop: () => clearTimeout(timer) };
}
