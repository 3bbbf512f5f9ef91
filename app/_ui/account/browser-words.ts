/** Browsers by the mark they bear in what they call themselves; those that bear several come first. */
const BROWSERS: [RegExp, string][] = [
  [/Edg\//, 'Edge'],
  [/OPR\//, 'Opera'],
  [/Firefox\//, 'Firefox'],
  [/Chrome\//, 'Chrome'],
  [/Safari\//, 'Safari'],
];
const DEVICES: [RegExp, string][] = [
  [/iPhone/, 'iPhone'],
  [/iPad/, 'iPad'],
  [/Android/, 'Android'],
  [/Windows/, 'Windows'],
  [/Mac OS X/, 'a Mac'],
  [/Linux/, 'Linux'],
];

/** What a browser calls itself, in a few words: enough for its person to know it by. */
export function browserWords(agent: string): string {
  const browser = BROWSERS.find(([mark]) => mark.test(agent))?.[1];
  const device = DEVICES.find(([mark]) => mark.test(agent))?.[1];
  if (browser === undefined) return agent === '' ? 'an unknown browser' : agent.slice(0, 40);
  return device === undefined ? browser : `${browser} on ${device}`;
}
