/**
 * Stands in for a browser or for Electron, which take their own kinds of arguments: notes them and the state of the profile
 * folder, then does what the file beside the notes says: close, crash, or stay until SIGTERM.
 */
import { appendFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';

const [notes = '', ...words] = process.argv.slice(2);
const note = (line: string) => appendFileSync(notes, `window ${line}\n`);
const optionNamed = (name: string) => words.find((word) => word.startsWith(`${name}=`))?.slice(name.length + 1) ?? null;

const profile = optionNamed('--user-data-dir');
if (profile !== null) {
  mkdirSync(join(profile, 'Default'));
  writeFileSync(join(profile, 'Default', 'History'), 'left over');
}
note(`opened ${optionNamed('--app') ?? words.join(' ')}`);
note(`profile ${profile}`);

const behavior = readFileSync(`${notes}.behavior`, 'utf8');
if (behavior.includes('announce')) console.log(JSON.stringify({ ready: 'app://archive/' }));
if (behavior.includes('crash')) process.exit(7);
if (behavior.includes('stay')) {
  const staysOpen = setInterval(() => undefined, 60_000);
  process.on('SIGTERM', () => {
    note('told to close');
    clearInterval(staysOpen);
  });
  note('stays');
}
