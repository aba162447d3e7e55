/**
 * Stands in for the loopback shell: announces an address, notes what happens to it, and closes on SIGTERM. Its first
 * argument is the file for its notes; `--refuse` makes it end before it announced anything.
 */
import { appendFileSync } from 'node:fs';
import process from 'node:process';

const [notes = '', ...words] = process.argv.slice(2);
const note = (line: string) => appendFileSync(notes, `host ${line}\n`);

note(`started ${words.join(' ')}`);
if (words.includes('--refuse')) process.exit(3);
const staysOpen = setInterval(() => undefined, 60_000);
process.on('SIGTERM', () => {
  note('closed');
  clearInterval(staysOpen);
});
console.log('a line that is no announcement');
console.log(JSON.stringify({ ready: `http://127.0.0.1:4000/?ticket=${process.pid}` }));
