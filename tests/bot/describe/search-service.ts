import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Reaction, SeenRequest } from '../../fixtures/hostile-weather.js';

/** A loopback place search that answers as it is told. */
export interface SearchService {
  readonly url: string;
  readonly seen: readonly SeenRequest[];
  /** How it answers from now on. */
  answer(reaction: Reaction): void;
  close(): Promise<void>;
}

export async function startSearchService(): Promise<SearchService> {
  const seen: SeenRequest[] = [];
  let reaction: Reaction = (response) => void response.writeHead(404).end();
  const server = createServer((message, response) => {
    const url = new URL(message.url ?? '/', 'http://127.0.0.1');
    const request: SeenRequest = { path: url.pathname, query: url.searchParams, headers: message.headers };
    seen.push(request);
    reaction(response, request);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    seen,
    answer: (next) => void (reaction = next),
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
