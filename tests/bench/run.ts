/**
 * `npm run bench`: one JSON line per figure. Ratios are taken in one run, in turns. Names given after `--` choose some of the
 * groups below.
 */
import process from 'node:process';
import { build } from '../../src/launch/build.ts';
import { benchRoom } from './benchRoom.ts';
import { coldStart } from './coldStart.ts';
import { root } from './core.ts';
import type { Figure } from './figure.ts';
import { forecasts } from './forecasts.ts';
import { importVsHand } from './importVsHand.ts';
import { kills } from './kills.ts';
import { ladderRoom } from './ladderRoom.ts';
import { missedMolts } from './missedMolts.ts';
import { trueClicksFigures } from './trueClicksFigures.ts';

const GROUPS: Record<string, () => Figure[] | Promise<Figure[]>> = {
  import: importVsHand,
  bench: benchRoom,
  ladder: ladderRoom,
  start: coldStart,
  accuracy: trueClicksFigures,
  kills,
  missed: missedMolts,
  forecasts,
};

const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !(name in GROUPS));
if (unknown.length > 0) {
  console.error(`Expected names from ${Object.keys(GROUPS).join(', ')} but received ${unknown.join(', ')}`);
  process.exit(1);
}

// The Bench room is measured as it is shipped.
if ((await build(root)) !== 0) process.exit(1);

let missed = 0;
for (const [name, measure] of Object.entries(GROUPS)) {
  if (asked.length > 0 && !asked.includes(name)) continue;
  for (const figure of await measure()) {
    console.log(JSON.stringify(figure));
    if (figure.ok === false) missed += 1;
  }
}
process.exitCode = missed === 0 ? 0 : 1;
