import { useEffect, useState } from 'react';
import { Refusal } from '../../domain/failure.ts';
import { addressOf, ask } from './ask.ts';

/** How often an archive that did not answer is asked again. */
const ASK_AGAIN_MS = 2_000;

/**
 * Holds a stream open for as long as the page is there: the loopback shell ends when nobody has been there for a while.
 *
 * @returns whether Exuviary answers.
 */
export function usePresence(): boolean {
  const [answers, setAnswers] = useState(true);
  useEffect(() => holdPresence(setAnswers), []);
  return answers;
}

/**
 * The end of the stream is the first sign that Exuviary itself may have ended; whether it has, a question tells, which is asked
 * again until there is an answer.
 *
 * @returns how to let go.
 */
export function holdPresence(onAnswers: (answers: boolean) => void): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let isHeld = true;
  let stream = open();

  function open(): EventSource {
    const opened = new EventSource(addressOf('GET /api/presence', {}));
    opened.onopen = () => onAnswers(true);
    opened.onerror = () => {
      clearTimeout(timer);
      void find(opened);
    };
    return opened;
  }

  async function find(of: EventSource): Promise<void> {
    const found = await isThere();
    // Let go of, or back by itself, meanwhile.
    if (!isHeld || of !== stream || of.readyState === EventSource.OPEN) return;
    onAnswers(found);
    clearTimeout(timer);
    if (!found) timer = setTimeout(() => void find(of), ASK_AGAIN_MS);
    else if (of.readyState === EventSource.CLOSED) timer = setTimeout(reopen, ASK_AGAIN_MS);
  }

  function reopen(): void {
    stream = open();
  }

  return () => {
    isHeld = false;
    clearTimeout(timer);
    stream.onerror = null;
    stream.close();
  };
}

/** Any answer will do, a refusal too. */
async function isThere(): Promise<boolean> {
  try {
    await ask('GET /api/preferences', {});
    return true;
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return error.failure.code !== 'unreachable';
  }
}
