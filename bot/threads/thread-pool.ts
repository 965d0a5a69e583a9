import type { Worker } from 'node:worker_threads';
import { startThread } from './start-thread.js';

/** Work for a thread and what came of it, matched by number. */
export interface ThreadTask<Question> {
  readonly id: number;
  readonly question: Question;
}

export type ThreadReply<Answer> = { readonly id: number } & ({ readonly answer: Answer } | { readonly fault: string });

export interface ThreadPool<Question, Answer> {
  readonly ask: (question: Question) => Promise<Answer>;
  close(): Promise<void>;
}

interface Waiting<Question, Answer> extends ThreadTask<Question> {
  readonly resolve: (answer: Answer) => void;
  readonly reject: (error: Error) => void;
}

/** A few threads that work through a queue; a thread that dies fails its task, and another takes its place. They keep no program alive that has nothing to do. */
export function threadPool<Question, Answer>(module: URL, size: number): ThreadPool<Question, Answer> {
  const queue: Waiting<Question, Answer>[] = [];
  const idle: Worker[] = [];
  const busy = new Map<Worker, Waiting<Question, Answer>>();
  let lastId = 0;
  let closed = false;

  const start = (): Worker => {
    const worker = startThread(module);
    let fault = new Error('the thread has ended');
    worker.on('message', (reply: ThreadReply<Answer>) => {
      const task = busy.get(worker)!;
      busy.delete(worker);
      worker.unref();
      idle.push(worker);
      if ('answer' in reply) task.resolve(reply.answer);
      else task.reject(new Error(reply.fault));
      next();
    });
    worker.on('error', (error) => (fault = error));
    worker.on('exit', () => {
      busy.get(worker)?.reject(fault);
      busy.delete(worker);
      const place = idle.indexOf(worker);
      if (place >= 0) idle.splice(place, 1);
      if (!closed) next();
    });
    return worker;
  };

  const next = (): void => {
    const task = queue[0];
    if (!task) return;
    const worker = idle.pop() ?? (busy.size < size ? start() : undefined);
    if (!worker) return;
    queue.shift();
    busy.set(worker, task);
    worker.ref();
    worker.postMessage({ id: task.id, question: task.question } satisfies ThreadTask<Question>);
  };

  return {
    ask: (question) =>
      new Promise((resolve, reject) => {
        lastId += 1;
        queue.push({ id: lastId, question, resolve, reject });
        next();
      }),
    async close() {
      closed = true;
      await Promise.all([...idle, ...busy.keys()].map((worker) => worker.terminate()));
      for (const { reject } of queue.splice(0)) reject(new Error('the assistant is stopping'));
    },
  };
}
