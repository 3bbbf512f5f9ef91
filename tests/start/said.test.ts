import { describe, expect, test } from 'vitest';
import { roomRefusal } from '../../app/_start/disk.mjs';
import { Failure, sentenceFor, speaksOfFullDisk } from '../../app/_start/failure.mjs';
import { nodeRefusal } from '../../app/_start/node-version.mjs';
import { readOptions } from '../../app/_start/options.mjs';

describe('the version of Node', () => {
  test('is refused below 20.19 and accepted from there on', () => {
    expect(nodeRefusal('18.20.4')).toContain('20.19');
    expect(nodeRefusal('20.18.9')).toContain('20.18.9');
    expect(nodeRefusal('20.19.0')).toBeUndefined();
    expect(nodeRefusal('22.0.0')).toBeUndefined();
  });
});

describe('what is said on the command line', () => {
  test('goes before the environment, and an empty text in the environment says nothing', () => {
    expect(readOptions([], environment({ PORT: '', DATABASE_URL: '' }))).toEqual({
      port: 3200,
      demo: false,
      tls: false,
      databaseUrl: undefined,
      databaseOwnerUrl: undefined,
    });
    expect(readOptions(['--port', '4000', '--demo'], environment({ PORT: '5000' }))).toMatchObject({
      port: 4000,
      demo: true,
    });
    expect(readOptions([], environment({ PORT: '5000' })).port).toBe(5000);
  });

  test.each([['0'], ['65536'], ['80x'], ['']])('is refused in a sentence when the port is "%s"', (port) => {
    expect(() => readOptions(['--port', port], environment({}))).toThrow(Failure);
  });

  // Outside reference: Node's own fetch, which blocks the ports that the Fetch Standard names.
  test.each([[2049], [4190], [6000], [6667], [10_080]])(
    'is refused when no browser opens a page on port %d',
    async (port) => {
      const why = await fetch(`http://127.0.0.1:${port}/`).then(null, ({ cause }: Error) => String(cause));
      expect(why).toContain('bad port');
      expect(() => readOptions(['--port', `${port}`], environment({}))).toThrow('Browsers open no page');
    },
  );

  test('is refused in a sentence that repeats it when it means nothing here', () => {
    expect(() => readOptions(['--prot', '80'], environment({}))).toThrow('--prot 80');
  });
});

describe('a full disk', () => {
  test('is seen before a step that needs more than is left', () => {
    expect(roomRefusal('/data', 500, 500)).toBeUndefined();
    expect(roomRefusal('/data', 499.9, 500)).toBe(
      'The disk that holds /data has 499 MiB left, and 500 MiB are needed: make room and start again.',
    );
    expect(roomRefusal('/data', 0.5, 500)).toBe('The disk that holds /data is full: make room and start again.');
  });

  test('is named as such wherever it is met', () => {
    const full = Object.assign(new Error('no space'), { code: 'ENOSPC', path: '/data/running.json' });
    expect(sentenceFor(full, '/data')).toContain('/data/running.json is full');
    expect(speaksOfFullDisk('FATAL: could not write: No space left on device')).toBe(true);
    expect(speaksOfFullDisk('FATAL: could not write')).toBe(false);
  });
});

test('a folder that may not be written to is named, and a fault of our own is not made into a sentence', () => {
  const closed = Object.assign(new Error('closed'), { code: 'EACCES', path: '/data' });
  expect(sentenceFor(closed, '/data')).toContain('/data');
  expect(sentenceFor(new TypeError('undefined is not a function'), '/data')).toBeUndefined();
});

function environment(said: Record<string, string>): NodeJS.ProcessEnv {
  return { NODE_ENV: 'test', ...said };
}
