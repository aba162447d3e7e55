import { extname } from 'node:path';
import { Worker } from 'node:worker_threads';
import type { HeicAnswer } from './heicDecoding.ts';

/** The same folder holds the thread's program both as source and as built, each under its own ending. */
const DECODING = new URL(`./heicDecoding${extname(import.meta.filename)}`, import.meta.url);

interface DecodingRequest {
  readonly path: string;
  readonly resolve: (answer: HeicAnswer) => void;
  readonly reject: (error: Error) => void;
}

/**
 * Decodes HEIC files in a thread, one at a time: each holds hundreds of megabytes while it is decoded. The thread starts with the
 * first picture and ends by itself after a rest; it keeps no program running.
 */
class HeicDecoder {
  readonly #waiting: DecodingRequest[] = [];
  #thread: Worker | null = null;
  #inHand: DecodingRequest | null = null;

  decode(path: string): Promise<HeicAnswer> {
    return new Promise((resolve, reject) => {
      this.#waiting.push({ path, resolve, reject });
      this.#goOn();
    });
  }

  #goOn(): void {
    if (this.#inHand !== null) return;
    const next = this.#waiting.shift();
    if (next === undefined) {
      this.#thread?.unref();
      return;
    }
    this.#inHand = next;
    this.#thread ??= this.#start();
    this.#thread.ref();
    this.#thread.postMessage(next.path);
  }

  #start(): Worker {
    const thread = new Worker(DECODING);
    let trouble: Error | null = null;
    thread.on('message', (answer: HeicAnswer) => {
      const done = this.#inHand;
      this.#inHand = null;
      done?.resolve(answer);
      this.#goOn();
    });
    thread.once('error', (error) => {
      trouble = error;
    });
    thread.once('exit', (code) => {
      this.#thread = null;
      const broken = this.#inHand;
      this.#inHand = null;
      if (broken !== null) {
        // Asked in the moment the thread went to rest: it never saw the request.
        if (trouble === null && code === 0) this.#waiting.unshift(broken);
        else broken.reject(trouble ?? new Error(`Expected an answer from the HEIC decoder but it ended with ${code}`));
      }
      this.#goOn();
    });
    return thread;
  }
}

/** The one decoder of the program, so that pictures wait for each other whoever asks. */
const decoder = new HeicDecoder();

/** Decodes a HEIC file into upright RGBA without holding up anything else. */
export function decodeHeic(path: string): Promise<HeicAnswer> {
  return decoder.decode(path);
}
