import type { Server, ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { createAdaptorServer } from '@hono/node-server';
import { Hono } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { HTTPException } from 'hono/http-exception';
import { SettingError } from '../../config/settings.js';
import type { Log } from '../ports.js';
import type { HttpAddress } from './address.js';
import type { Door } from './door.js';
import { healthOf, type Check } from './health.js';
import type { Metrics } from './metrics.js';

export interface HttpOptions {
  readonly address: HttpAddress;
  readonly checks: Readonly<Record<string, Check>>;
  readonly metrics: Metrics | null;
  readonly doors: readonly Door[];
  readonly log: Log;
}

export interface HttpServer {
  /** Also where port 0 was asked for. */
  readonly url: string;
  /** Takes no more requests and resolves when those under way are answered, or after a while. */
  close(): Promise<void>;
}

/** An update of a chat service is some kilobytes; this is far more. Project estimate. */
const LARGEST_BODY_BYTES = 1_000_000;
/** What is still under way then is cut off. Project estimate. */
const LONGEST_GOODBYE_MS = 5_000;

const RESERVED = ['/healthz', '/metrics'];

/** Health, numbers and the doors of services that bring messages. */
export async function startHttp({ address, checks, metrics, doors, log }: HttpOptions): Promise<HttpServer> {
  const app = new Hono();
  app.get('/healthz', async (context) => {
    const health = await healthOf(checks);
    return context.json(health, health.ok ? 200 : 503);
  });
  if (metrics) {
    app.get('/metrics', async (context) => {
      const { contentType, text } = await metrics.page();
      return context.body(text, 200, { 'content-type': contentType });
    });
  }
  for (const door of doors) {
    if (RESERVED.includes(door.path)) throw new SettingError(`the path ${door.path} serves something else: choose another one for the webhook`);
    app.post(door.path, bodyLimit({ maxSize: LARGEST_BODY_BYTES }), async (context) => {
      const body = await context.req.text();
      const status = await door.knock({ header: (name) => context.req.header(name), body });
      return new Response(null, { status });
    });
  }
  app.onError((error, context) => {
    if (error instanceof HTTPException) return error.getResponse();
    log.error('http request failed', { path: context.req.path, error });
    return context.text('error', 500);
  });
  const server = createAdaptorServer({ fetch: app.fetch }) as Server;
  const underWay = new Set<ServerResponse>();
  server.on('request', (_request, response: ServerResponse) => {
    underWay.add(response);
    response.once('close', () => underWay.delete(response));
  });
  await listening(server, address);
  const { port } = server.address() as AddressInfo;
  return { url: `http://${address.host.includes(':') ? `[${address.host}]` : address.host}:${port}`, close: () => closed(server, underWay) };
}

const listening = (server: Server, { host, port }: HttpAddress): Promise<void> =>
  new Promise((resolve, reject) => {
    server.once('error', (error) => reject(new SettingError(`DUSKWARD_HTTP: cannot listen on ${host}:${port} (${error.message})`)));
    server.listen(port, host, resolve);
  });

const closed = (server: Server, underWay: ReadonlySet<ServerResponse>): Promise<void> =>
  new Promise((resolve) => {
    const cutOff = setTimeout(() => server.closeAllConnections(), LONGEST_GOODBYE_MS);
    server.close(() => {
      clearTimeout(cutOff);
      resolve();
    });
    // Connections that are kept open for a next request would hold us up.
    const closeIfQuiet = (): void => {
      if (underWay.size === 0) server.closeAllConnections();
    };
    for (const response of underWay) response.once('close', closeIfQuiet);
    closeIfQuiet();
  });
