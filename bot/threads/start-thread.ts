import { Worker } from 'node:worker_threads';

/** What teaches a thread TypeScript, as `npm start` and the tests do for this one; it is told the file to run. */
const TYPESCRIPT_FIRST = "import('tsx/esm/api').then(({ register }) => { register(); return import(require('node:worker_threads').workerData); });";

/** Starts a module of ours in a thread. Built, it is plain JavaScript; from its source it is TypeScript, which a thread does not understand by itself. */
export function startThread(module: URL): Worker {
  if (!module.pathname.endsWith('.ts')) return new Worker(module);
  return new Worker(TYPESCRIPT_FIRST, { eval: true, workerData: module.href });
}
