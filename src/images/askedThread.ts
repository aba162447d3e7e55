import { extname } from 'node:path';
import { type Transferable, Worker } from 'node:worker_threads';
import type { ThreadAnswer, ThreadQuestion } from './answeringThread.ts';

/** A thread that answers questions. It starts with the first and stays; with nothing to answer it keeps no program running. */
export interface AskedThread<Question, Answer> {
  /**
   * @param given moved to the thread instead of copied.
   * @throws {Error} when the thread fails or ends over the question; the next question starts another.
   */
  ask(question: Question, given?: readonly Transferable[]): Promise<Answer>;
  /** Ends the thread; whatever it was asked is rejected. */
  close(): Promise<void>;
}

interface Waiting<Answer> {
  readonly resolve: (answer: Answer) => void;
  readonly reject: (error: Error) => void;
}

/**
 * @param name of the thread's program in this folder, which holds it both as source and as built, each under its own ending.
 * @param called what failures call it.
 */
export function openThread<Question, Answer>(name: string, called: string): AskedThread<Question, Answer> {
  const program = new URL(`./${name}${extname(import.meta.filename)}`, import.meta.url);
  const waiting = new Map<number, Waiting<Answer>>();
  let worker: Worker | null = null;
  let lastTicket = 0;

  const failAll = (ended: Worker, error: Error): void => {
    // A thread that failed also ends; by then another may have taken its place.
    if (worker !== ended) return;
    for (const { reject } of waiting.values()) reject(error);
    waiting.clear();
    worker = null;
  };
  const started = (): Worker => {
    if (worker) return worker;
    const fresh = new Worker(program);
    fresh.on('message', (message: ThreadAnswer<Answer>) => {
      const asked = waiting.get(message.ticket);
      waiting.delete(message.ticket);
      if (waiting.size === 0) fresh.unref();
      if ('reason' in message) asked?.reject(new Error(`The ${called} failed: ${message.reason}`));
      else asked?.resolve(message.answer);
    });
    fresh.on('error', (error) => failAll(fresh, error));
    fresh.on('exit', (code) => failAll(fresh, new Error(`Expected an answer of the ${called} but it ended with ${code}`)));
    worker = fresh;
    return fresh;
  };

  return {
    ask(question, given = []) {
      lastTicket += 1;
      const message: ThreadQuestion<Question> = { ticket: lastTicket, question };
      return new Promise((resolve, reject) => {
        waiting.set(message.ticket, { resolve, reject });
        const thread = started();
        thread.ref();
        thread.postMessage(message, given);
      });
    },
    async close() {
      await worker?.terminate();
    },
  };
}
