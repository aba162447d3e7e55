import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { unwrap } from '../../src/domain/result.ts';
import { openScaleFinder, type ScaleFinder } from '../../src/images/scaleFinder.ts';
import { photoTruths, pictureOf } from '../support/photoTruth.ts';

const opened: ScaleFinder[] = [];
let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'scale-finder-'));
});
afterEach(async () => {
  await Promise.all(opened.splice(0).map((finder) => finder.close()));
  rmSync(folder, { recursive: true, force: true });
});

const NO_PICTURE = {
  file: { path: '/nowhere', name: 'nowhere.jpg' },
  facts: { widthPx: 1, heightPx: 1, facts: { focalLength35Mm: null } },
};

/** A finder whose process dies over its first `deaths` questions and then finds nothing; each question is written down. */
function mortalFinder(deaths: number): { readonly finder: ScaleFinder; readonly asked: () => number } {
  const notes = join(folder, 'notes');
  writeFileSync(notes, '');
  const program = join(folder, 'mortal.mjs');
  writeFileSync(
    program,
    `import { appendFileSync, readFileSync } from 'node:fs';
process.on('message', ({ ticket }) => {
  appendFileSync(${JSON.stringify(notes)}, '?');
  if (readFileSync(${JSON.stringify(notes)}).length <= ${deaths}) process.kill(process.pid, 'SIGKILL');
  else process.send({ ticket, proposals: { ok: true, value: [] } });
});
process.once('disconnect', () => process.exit());
`,
  );
  const finder = openScaleFinder(program);
  opened.push(finder);
  return { finder, asked: () => readFileSync(notes).length };
}

function silentProgram(): string {
  const program = join(folder, 'silent.mjs');
  writeFileSync(program, `process.on('message', () => {}); process.once('disconnect', () => process.exit());`);
  return program;
}

describe('the process that looks for scale objects', () => {
  test('finds the card in a photo, and says what is wrong with a file', async () => {
    const finder = openScaleFinder();
    opened.push(finder);
    const truth = photoTruths().find(({ name }) => name === 'specimen-c_instar-10_dorsal');
    if (!truth) throw new Error('The photo is missing');
    const path = join(import.meta.dirname, '../../resources/sample/photos/saffron-10-dorsal.jpg');
    const found = unwrap(await finder.propose({ file: { path, name: 'saffron-10.jpg' }, facts: pictureOf(truth) }));
    expect(found[0]).toMatchObject({ marks: { kind: 'points', object: 'markers' } });
    const text = join(folder, 'text.jpg');
    writeFileSync(text, 'no picture');
    expect(await finder.propose({ ...NO_PICTURE, file: { path: text, name: 'text.jpg' } })).toMatchObject({ ok: false });
  });

  test('is asked once more when it dies over a question', async () => {
    const { finder, asked } = mortalFinder(1);
    expect(await finder.propose(NO_PICTURE)).toEqual({ ok: true, value: [] });
    expect(asked()).toBe(2);
  });

  test('is given up after it died twice over the same question, and answers the next', async () => {
    const { finder, asked } = mortalFinder(2);
    await expect(finder.propose(NO_PICTURE)).rejects.toThrow('SIGKILL');
    expect(asked()).toBe(2);
    expect(await finder.propose(NO_PICTURE)).toEqual({ ok: true, value: [] });
  });

  test('leaves no question without an answer when it is closed, and takes none after', async () => {
    const finder = openScaleFinder(silentProgram());
    const answer = expect(finder.propose(NO_PICTURE)).rejects.toThrow('Expected scale objects');
    await finder.close();
    await answer;
    await expect(finder.propose(NO_PICTURE)).rejects.toThrow('closed');
  });

  test('is given up when it does not answer', async () => {
    const finder = openScaleFinder(silentProgram(), 50);
    opened.push(finder);
    await expect(finder.propose(NO_PICTURE)).rejects.toThrow('nothing for 50 ms');
  });
});
