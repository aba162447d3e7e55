import { parentPort } from 'node:worker_threads';

export interface ThreadQuestion<Question> {
  readonly ticket: number;
  readonly question: Question;
}

export type ThreadAnswer<Answer> =
  | { readonly ticket: number; readonly answer: Answer }
  | { readonly ticket: number; readonly reason: string };

/** Makes this thread one that answers what it is asked; see `openThread`. */
export function answerQuestions<Question, Answer>(answerTo: (question: Question) => Answer | Promise<Answer>): void {
  const messageFor = async ({ ticket, question }: ThreadQuestion<Question>): Promise<ThreadAnswer<Answer>> => {
    try {
      return { ticket, answer: await answerTo(question) };
    } catch (error) {
      return { ticket, reason: error instanceof Error ? error.message : String(error) };
    }
  };
  parentPort?.on('message', async (asked: ThreadQuestion<Question>) => parentPort?.postMessage(await messageFor(asked)));
}
