import { extname } from 'node:path';
import { Worker } from 'node:worker_threads';
import type { FoundScale, ScaleProposal } from '../domain/finding/foundScale.ts';
import type { RoughScale } from '../domain/finding/refinement.ts';
import type { Result } from '../domain/result.ts';
import type { FindingAnswer, FindingPicture, FindingQuestion } from './scaleFinding.ts';

/**
 * Finds scale objects in pictures, in a thread of its own that starts with the first picture. Whoever asks sees to it that one
 * question is answered before the next is put: a picture takes hundreds of megabytes while it is looked at.
 */
export interface ScaleFinder {
  /** Fails as `examinePicture` does. */
  propose(picture: FindingPicture): Promise<Result<readonly ScaleProposal[]>>;
  /** Fails as `examinePicture` and `refineScale` do. */
  refine(picture: FindingPicture, rough: RoughScale): Promise<Result<FoundScale>>;
  /** Ends the thread; whatever it was asked is rejected. */
  close(): Promise<void>;
}

/** The same folder holds the thread's program both as source and as built, each under its own ending. */
const FINDING = new URL(`./scaleFinding${extname(import.meta.filename)}`, import.meta.url);

interface Waiting {
  readonly resolve: (answer: FindingAnswer) => void;
  readonly reject: (error: Error) => void;
}

export function openScaleFinder(): ScaleFinder {
  const waiting = new Map<number, Waiting>();
  let thread: Worker | null = null;
  let lastTicket = 0;

  const failAll = (error: Error): void => {
    thread = null;
    for (const { reject } of waiting.values()) reject(error);
    waiting.clear();
  };
  const start = (): Worker => {
    const fresh = new Worker(FINDING);
    fresh.on('message', (answer: FindingAnswer) => {
      const asked = waiting.get(answer.ticket);
      waiting.delete(answer.ticket);
      // A thread with nothing to do must not keep the program from ending.
      if (waiting.size === 0) fresh.unref();
      if ('reason' in answer) asked?.reject(new Error(`Looking for scale objects failed: ${answer.reason}`));
      else asked?.resolve(answer);
    });
    fresh.once('error', failAll);
    fresh.once('exit', (code) => failAll(new Error(`Expected scale objects from the finder but it ended with ${code}`)));
    return fresh;
  };
  const ask = (question: Omit<FindingQuestion, 'ticket'>): Promise<FindingAnswer> =>
    new Promise((resolve, reject) => {
      lastTicket += 1;
      waiting.set(lastTicket, { resolve, reject });
      thread ??= start();
      thread.ref();
      thread.postMessage({ ticket: lastTicket, ...question } satisfies FindingQuestion);
    });

  return {
    async propose(picture) {
      const answer = await ask({ picture, rough: null });
      if ('proposals' in answer) return answer.proposals;
      throw new TypeError('Expected proposals from the finder but received something else');
    },
    async refine(picture, rough) {
      const answer = await ask({ picture, rough });
      if ('refined' in answer) return answer.refined;
      throw new TypeError('Expected refined marks from the finder but received something else');
    },
    async close() {
      await thread?.terminate();
    },
  };
}
