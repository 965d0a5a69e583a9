import { collectDefaultMetrics, Counter, Gauge, Registry } from 'prom-client';

/** The values that a label may take. A closed list: nothing of a chat or a person can become a label. */
export type LabelValues = Readonly<Record<string, readonly string[]>>;

/** Numbers for the operator. */
export interface Metrics {
  /** Returns what counts one more. A label value that is not on the list is counted as "other". */
  counter(name: string, help: string, labels?: LabelValues): (values?: Readonly<Record<string, string>>) => void;
  /** A number that is read whenever the operator looks. */
  gauge(name: string, help: string, read: () => number | Promise<number>): void;
  page(): Promise<{ readonly contentType: string; readonly text: string }>;
}

const PREFIX = 'duskward_';
const OTHER = 'other';

/** Counters and gauges of the product, and of the process that it runs in. */
export function createMetrics(): Metrics {
  const registry = new Registry();
  collectDefaultMetrics({ register: registry });
  return {
    counter: (name, help, labels = {}) => {
      const counter = new Counter({ name: `${PREFIX}${name}`, help, labelNames: Object.keys(labels), registers: [registry] });
      const [only, ...more] = Object.entries(labels);
      // Shown as zero before it happens, so that a first failure is a rise.
      if (only && more.length === 0) for (const value of only[1]) counter.inc({ [only[0]]: value }, 0);
      return (values = {}) => counter.inc(Object.fromEntries(Object.entries(labels).map(([label, known]) => [label, known.includes(values[label] ?? '') ? values[label]! : OTHER])));
    },
    gauge: (name, help, read) => {
      new Gauge({
        name: `${PREFIX}${name}`,
        help,
        registers: [registry],
        async collect() {
          this.set(await read());
        },
      });
    },
    page: async () => ({ contentType: registry.contentType, text: await registry.metrics() }),
  };
}
