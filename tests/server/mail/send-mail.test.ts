import { simpleParser } from 'mailparser';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { type MailServer, startMailServer } from '../../_support/mail-server';

let server: MailServer;

beforeEach(async () => {
  server = await startMailServer();
  vi.resetModules();
  vi.stubEnv('DATABASE_URL', 'postgresql://nobody@127.0.0.1:1/none');
  vi.stubEnv('HOLDFAST_MAIL_URL', server.url);
  vi.stubEnv('HOLDFAST_MAIL_FROM', 'Holdfast <watch@aquarium.example>');
});

afterEach(async () => {
  vi.unstubAllEnvs();
  await server.close();
});

/** The module as a process sees it that was started in this environment. */
const fresh = async () => await import('#server/mail/send-mail');

describe('mail', () => {
  test('reaches a real mail server, letters and line ends whole', async () => {
    const mail = await fresh();
    const text = 'Wasser läuft über: 25 °C, 33 ‰.\n\nA second line.\n';
    await mail.sendMail({ to: ['lead@aquarium.example', 'keeper@aquarium.example'], subject: 'Störung – Ωmega', text });
    expect(server.taken).toMatchObject([
      { from: 'watch@aquarium.example', to: ['lead@aquarium.example', 'keeper@aquarium.example'] },
    ]);
    const read = await simpleParser(server.taken[0]?.raw ?? '');
    expect(read.subject).toBe('Störung – Ωmega');
    expect(read.text?.trimEnd()).toBe(text.trimEnd());
  });

  test('never puts a header where a subject was given', async () => {
    const mail = await fresh();
    await mail.sendMail({ to: 'lead@aquarium.example', subject: 'a\r\nBcc: other@aquarium.example', text: 'x' });
    expect(server.taken[0]?.to).toEqual(['lead@aquarium.example']);
    const read = await simpleParser(server.taken[0]?.raw ?? '');
    expect(read.bcc).toBeUndefined();
  });

  test('that is not taken is an error, so that it is tried again', async () => {
    const mail = await fresh();
    await expect(mail.sendMail({ to: 'nobody@aquarium.example', subject: 's', text: 't' })).rejects.toThrow();
    vi.stubEnv('HOLDFAST_MAIL_URL', '');
    vi.resetModules();
    const silent = await fresh();
    expect(silent.isMailConfigured()).toBe(false);
    await expect(silent.sendMail({ to: 'lead@aquarium.example', subject: 's', text: 't' })).rejects.toThrow(
      'No mail server was named',
    );
  });
});
