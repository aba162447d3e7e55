import { type ChildProcess, fork } from 'node:child_process';
import { once } from 'node:events';
import { extname } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { FoundScale, ScaleProposal } from '../domain/finding/foundScale.ts';
import type { RoughScale } from '../domain/finding/refinement.ts';
import type { Result } from '../domain/result.ts';
import type { FindingAnswer, FindingPicture, FindingQuestion } from './scaleFinding.ts';

/**
 * Finds scale objects in pictures, in a process of its own that starts with the first picture. Whoever asks sees to it that one
 * question is answered before the next is put: a picture takes hundreds of megabytes while it is looked at.
 */
export interface ScaleFinder {
  /** Fails as `examinePicture` does. */
  propose(picture: FindingPicture): Promise<Result<readonly ScaleProposal[]>>;
  /** Fails as `examinePicture` and `refineScale` do. */
  refine(picture: FindingPicture, rough: RoughScale): Promise<Result<FoundScale>>;
  /** Ends the process; whatever it was asked is rejected. */
  close(): Promise<void>;
}

/** The same folder holds the process's program both as source and as built, each under its own ending. */
const FINDING = fileURLToPath(new URL(`./scaleFinding${extname(import.meta.filename)}`, import.meta.url));

/** A process that dies over a question is asked it once more: what kills it is rare and hits another moment the next time. */
const ATTEMPTS = 2;

/** Far beyond the largest picture on a slow machine: whoever takes longer goes round in circles. */
const PATIENCE_MS = 180_000;

interface Waiting {
  readonly question: FindingQuestion;
  readonly attempt: number;
  readonly resolve: (answer: FindingAnswer) => void;
  readonly reject: (error: Error) => void;
}

/**
 * @param program the process's program, which answers `FindingQuestion` with `FindingAnswer`.
 * @param patienceMs after which a question is given up, and the process ended that did not answer it.
 */
export function openScaleFinder(program: string = FINDING, patienceMs: number = PATIENCE_MS): ScaleFinder {
  const waiting = new Map<number, Waiting>();
  let finder: ChildProcess | null = null;
  let closed = false;
  let lastTicket = 0;

  const start = (): ChildProcess => {
    const fresh = fork(program, { execArgv: ['--disable-warning=ExperimentalWarning'], serialization: 'advanced' });
    fresh.on('message', (answer: FindingAnswer) => {
      const asked = waiting.get(answer.ticket);
      waiting.delete(answer.ticket);
      if (waiting.size === 0) letEnd(fresh);
      if ('reason' in answer) asked?.reject(new Error(`Looking for scale objects failed: ${answer.reason}`));
      else asked?.resolve(answer);
    });
    let ended = false;
    const end = (how: string): void => {
      if (ended) return;
      ended = true;
      finder = null;
      const unanswered = [...waiting.values()];
      waiting.clear();
      for (const asked of unanswered) {
        if (closed || asked.attempt >= ATTEMPTS) asked.reject(new Error(`Expected scale objects from the finder but ${how}`));
        else put({ ...asked, attempt: asked.attempt + 1 });
      }
    };
    fresh.once('error', (error) => end(`it failed: ${error.message}`));
    fresh.once('exit', (code, signal) => end(`it ended with ${signal ?? code}`));
    return fresh;
  };
  const put = (asked: Waiting): void => {
    waiting.set(asked.question.ticket, asked);
    finder ??= start();
    keepWaitingFor(finder);
    const asks = finder;
    // Whoever cannot be asked is ended, if it is not already: its exit is told to all who wait.
    asks.send(asked.question, (error) => {
      if (error !== null) asks.kill('SIGKILL');
    });
  };
  const giveUp = (ticket: number): void => {
    const asked = waiting.get(ticket);
    if (asked === undefined) return;
    waiting.delete(ticket);
    asked.reject(new Error(`Expected scale objects from the finder but received nothing for ${patienceMs} ms`));
    finder?.kill('SIGKILL');
  };
  const ask = (question: Omit<FindingQuestion, 'ticket'>): Promise<FindingAnswer> =>
    new Promise((resolve, reject) => {
      if (closed) return reject(new Error('Expected an open finder of scale objects but it was closed'));
      lastTicket += 1;
      const ticket = lastTicket;
      const deadline = setTimeout(() => giveUp(ticket), patienceMs);
      put({
        question: { ticket, ...question },
        attempt: 1,
        resolve: (answer) => {
          clearTimeout(deadline);
          resolve(answer);
        },
        reject: (error) => {
          clearTimeout(deadline);
          reject(error);
        },
      });
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
      closed = true;
      if (finder === null) return;
      // A process that has nothing to do holds nothing up; its end is waited for nevertheless.
      finder.ref();
      const exited = once(finder, 'exit');
      finder.kill('SIGKILL');
      await exited;
    },
  };
}

/** A process with nothing to do must not keep the program from ending; it ends with the program. */
function letEnd(finder: ChildProcess): void {
  finder.unref();
  finder.channel?.unref();
}

function keepWaitingFor(finder: ChildProcess): void {
  finder.ref();
  finder.channel?.ref();
}
