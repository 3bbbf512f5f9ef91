import 'server-only';
import { loadDemo } from '#server/facility/load-demo';
import { refusalWords } from '#server/gate/refusal-words';
import { LOCAL_PERSON } from '#server/gate/who';
import { demoPeopleWords } from './demo-people-words';
import { counted } from './said';
import { cannot, withDatabase } from './with-database';

void withDatabase(async () => {
  const loaded = await loadDemo(LOCAL_PERSON);
  if (!loaded.ok) return cannot(`The demo could not be loaded. ${refusalWords(loaded.reason)}`);
  for (const { site, systems } of loaded.value.stored)
    process.stdout.write(`${site.name} (${site.key}): ${counted(systems, 'system')}.\n`);
  for (const key of loaded.value.left) process.stdout.write(`${key} is there already and was left as it is.\n`);
  process.stdout.write(demoPeopleWords(loaded.value.people));
});
