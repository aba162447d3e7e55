import { parseArgs } from 'node:util';
import { checkedNow } from '../core/ambient.ts';

export interface LoopbackArguments {
  /** null for the platform's data folder. */
  readonly archive: string | null;
  readonly port: number;
  readonly tokenFile: string | null;
  readonly now: string | null;
  readonly seed: string | null;
  readonly renderer: string | null;
  readonly keep: boolean;
  /** Only the usage is asked for. */
  readonly help: boolean;
}

export const USAGE = `Usage: loopback [--archive DIR] [--port N] [--token-file FILE] [--keep] [--renderer DIR] [--now INSTANT] [--seed TEXT] [--help]

  --archive DIR      folder of the archive; it is made if there is none
  --port N           port on 127.0.0.1; without it, any free one
  --token-file FILE  writes the token for programs (Authorization: Bearer) to FILE, readable by you only
  --keep             stays when nobody has been here for a while
  --renderer DIR     the built pages
  --now INSTANT      starts the clock at this moment, for repeatable runs
  --seed TEXT        makes the identifiers repeatable
  --help             this text`;

/** @throws TypeError with a sentence for the person at the terminal when an argument is unknown or makes no sense. */
export function parseArguments(words: readonly string[]): LoopbackArguments {
  const { values } = parseArgs({
    args: [...words],
    options: {
      archive: { type: 'string' },
      port: { type: 'string', default: '0' },
      'token-file': { type: 'string' },
      now: { type: 'string' },
      seed: { type: 'string' },
      renderer: { type: 'string' },
      keep: { type: 'boolean', default: false },
      help: { type: 'boolean', default: false },
    },
  });
  const empty = Object.entries(values).find(([, value]) => value === '');
  if (empty) throw new TypeError(`Expected a value after --${empty[0]} but received none`);
  const port = Number(values.port);
  if (!/^\d+$/.test(values.port) || port > 65_535)
    throw new TypeError(`Expected --port to be a number from 0 to 65535 but received ${values.port}`);
  return {
    archive: values.archive ?? null,
    port,
    tokenFile: values['token-file'] ?? null,
    now: values.now === undefined ? null : checkedNow(values.now),
    seed: values.seed ?? null,
    renderer: values.renderer ?? null,
    keep: values.keep,
    help: values.help,
  };
}
