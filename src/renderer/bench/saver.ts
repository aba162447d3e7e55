import { type Failure, Refusal } from '../../domain/failure.ts';
import { failureOf } from './failureOf.ts';
import { afterDispatch, type Dispatch, nextDispatch, pauseBeforeAttempt, type Stored, type Wanted, whatHappened } from './saving.ts';

/** The outside, as far as saving needs it. Failures are thrown as Refusal. */
export interface SavingPorts {
  send(dispatch: Dispatch): Promise<{ id: string; version: number }>;
  /** What the archive holds now. After `begin-reading` it looks for the pass that was begun. */
  reload(after: Dispatch): Promise<Stored>;
  /** Resolves after so long, or earlier when trying again makes sense. */
  pause(ms: number): Promise<void>;
}

export type SavingState =
  | { readonly kind: 'saved' }
  | { readonly kind: 'saving' }
  /** The archive cannot be reached; tried again by itself. */
  | { readonly kind: 'waiting' }
  /** The archive said no, or we failed ourselves; tried again at the next change or when asked. */
  | { readonly kind: 'refused'; readonly failure: Failure };

export interface SavingNews {
  state(state: SavingState): void;
  stored(stored: Stored, sent: Dispatch): void;
  /** Somebody else changed the photo meanwhile: this is what stands there now. What was wanted is not saved. */
  overtaken(now: Stored, wanted: Wanted): void;
}

export interface Saver {
  /** Says what should be stored; returns at once. */
  want(wanted: Wanted): void;
  retry(): void;
  /** Resolves as soon as nothing is on its way: all is stored, or the archive refused. */
  quiet(): Promise<void>;
  hasUnsent(): boolean;
  /** Of the pass in hand; null until it is stored. */
  readingId(): string | null;
}

/** Sends settled changes one at a time until the archive holds what is wanted. Never gives up on what is unsent. */
export function createSaver(initial: Stored, ports: SavingPorts, news: SavingNews): Saver {
  let stored = initial;
  let wanted: Wanted = { marks: initial.scale.marks, check: initial.scale.check, draft: initial.reading?.draft ?? null };
  let running: Promise<void> | null = null;

  /** Sends until nothing is left to send or the archive refuses; answers the state this ends in. */
  async function sendAll(): Promise<SavingState> {
    let failedAttempts = 0;
    for (let next = nextDispatch(stored, wanted); next !== null; next = nextDispatch(stored, wanted)) {
      if (failedAttempts === 0) news.state({ kind: 'saving' });
      const outcome = await attempt(next, failedAttempts > 0);
      if (outcome.kind === 'refused') return outcome;
      if (outcome.kind === 'unreachable') {
        failedAttempts += 1;
        news.state({ kind: 'waiting' });
        await ports.pause(pauseBeforeAttempt(failedAttempts));
      } else failedAttempts = 0;
    }
    return { kind: 'saved' };
  }

  async function attempt(
    dispatch: Dispatch,
    answerWasLost: boolean,
  ): Promise<{ kind: 'done' | 'unreachable' } | Extract<SavingState, { kind: 'refused' }>> {
    try {
      if (answerWasLost && (await settleDoubt(dispatch))) return { kind: 'done' };
      keep(afterDispatch(stored, dispatch, await ports.send(dispatch)), dispatch);
      return { kind: 'done' };
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      if (error.failure.code === 'unreachable') return { kind: 'unreachable' };
      if (error.failure.code !== 'changed-meanwhile' && error.failure.code !== 'not-found')
        return { kind: 'refused', failure: error.failure };
      return overtakenBy(dispatch);
    }
  }

  async function overtakenBy(dispatch: Dispatch): ReturnType<typeof attempt> {
    try {
      if (await settleDoubt(dispatch)) return { kind: 'done' };
      return { kind: 'refused', failure: { code: 'changed-meanwhile', what: 'photo', id: '', version: stored.scale.version } };
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      return error.failure.code === 'unreachable' ? { kind: 'unreachable' } : { kind: 'refused', failure: error.failure };
    }
  }

  /** Looks at what the archive holds. True when nothing is left to send of this dispatch; false when it should be sent. */
  async function settleDoubt(dispatch: Dispatch): Promise<boolean> {
    const now = await ports.reload(dispatch);
    const happened = whatHappened(stored, dispatch, now);
    if (happened === 'untouched') return false;
    if (happened === 'arrived') {
      keep(now, dispatch);
      return true;
    }
    const displaced = wanted;
    stored = now;
    wanted = { marks: now.scale.marks, check: now.scale.check, draft: now.reading?.draft ?? null };
    news.overtaken(now, displaced);
    return true;
  }

  function keep(now: Stored, sent: Dispatch): void {
    stored = now;
    news.stored(now, sent);
  }

  function start(): void {
    if (running !== null) return;
    running = sendAll().then(
      (end) => {
        // Cleared first: whoever hears the news may want something new at once.
        running = null;
        news.state(end);
        if (end.kind === 'saved' && nextDispatch(stored, wanted) !== null) start();
      },
      (error: unknown) => {
        // Nobody awaits this: thrown on, it would leave "saving" on the screen for ever.
        running = null;
        news.state({ kind: 'refused', failure: failureOf(error) });
      },
    );
  }

  return {
    want(next) {
      wanted = next;
      start();
    },
    retry: start,
    async quiet() {
      while (running !== null) await running;
    },
    readingId: () => stored.reading?.id ?? null,
    hasUnsent: () => nextDispatch(stored, wanted) !== null,
  };
}
