import { extname } from 'node:path';
import { Worker } from 'node:worker_threads';
import type { HeicAnswer } from './heicDecoding.ts';

/** The same folder holds the thread's program both as source and as built, each under its own ending. */
const DECODING = new URL(`./heicDecoding${extname(import.meta.filename)}`, import.meta.url);

/** Decodes a HEIC file into upright RGBA without holding up anything else. The thread has ended, its memory free, when this answers. */
export async function decodeHeic(path: string): Promise<HeicAnswer> {
  const worker = new Worker(DECODING, { workerData: path });
  return await new Promise<HeicAnswer>((resolve, reject) => {
    let answer: HeicAnswer | null = null;
    worker.once('message', (message: HeicAnswer) => {
      answer = message;
    });
    worker.once('error', reject);
    worker.once('exit', (code) => {
      if (answer) resolve(answer);
      else reject(new Error(`Expected an answer from the HEIC decoder but it ended with ${code}`));
    });
  });
}
