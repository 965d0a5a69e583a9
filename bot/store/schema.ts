import type { ColumnType, Generated } from 'kysely';
import type { JournalTables } from './journal-schema.js';

/**
 * The tables as the queries see them: names in camel case, in the database in snake case (receivedAtS is received_at_s).
 * Times are whole epoch seconds, JSON is text, truth is 0 or 1: the same on every engine.
 */
export interface StoreTables extends JournalTables {
  readonly greenhouse: GreenhouseTable;
  readonly reading: ReadingTable;
  readonly action: ActionTable;
  readonly weather: WeatherTable;
  readonly advisory: AdvisoryTable;
  readonly learning: LearningTable;
  readonly outcome: OutcomeTable;
  readonly mark: MarkTable;
}

/** One row a version. */
export interface GreenhouseTable {
  readonly id: string;
  readonly version: number;
  readonly body: string;
  readonly savedAtS: number;
}

/** Written once: only how it ended (replaced or withdrawn) is set later, and that once. */
export interface ReadingTable {
  readonly id: Generated<number>;
  readonly greenhouseId: string;
  readonly receivedAtS: number;
  readonly validAtS: number;
  readonly place: string;
  readonly statistic: 'now' | 'low' | 'high';
  readonly tempC: number;
  readonly text: string;
  readonly judged: 'good' | 'not-reset' | 'sunlit' | 'open';
  readonly thermometer: string | null;
  readonly replacedBy: ColumnType<number | null, never, number>;
  readonly withdrawnAtS: ColumnType<number | null, never, number>;
  readonly message: string | null;
}

export interface ActionTable {
  readonly id: Generated<number>;
  readonly greenhouseId: string;
  readonly receivedAtS: number;
  readonly night: string;
  readonly body: string;
  readonly done: 0 | 1;
  readonly text: string;
  readonly withdrawnAtS: ColumnType<number | null, never, number>;
  readonly message: string | null;
}

export interface OutcomeTable {
  readonly id: Generated<number>;
  readonly greenhouseId: string;
  readonly receivedAtS: number;
  readonly night: string;
  readonly crop: string;
  readonly bed: string | null;
  readonly state: 'fine' | 'marked' | 'dead';
  readonly text: string;
  readonly withdrawnAtS: ColumnType<number | null, never, number>;
  readonly message: string | null;
}

export interface MarkTable {
  readonly id: Generated<number>;
  readonly greenhouseId: string;
  readonly receivedAtS: number;
  readonly changedAtS: number;
  readonly body: string;
  readonly counted: 0 | 1;
  readonly text: string;
  readonly withdrawnAtS: ColumnType<number | null, never, number>;
  readonly message: string | null;
}

/** One row a place: an old forecast is of no use once there is a newer one. */
export interface WeatherTable {
  readonly placeKey: string;
  readonly issuedAtS: number;
  readonly body: string;
}

/** One row a greenhouse. */
export interface LearningTable {
  readonly greenhouseId: string;
  readonly learnedAtS: number;
  readonly body: string;
}

/** Written once, as issued. */
export interface AdvisoryTable {
  readonly id: Generated<number>;
  readonly greenhouseId: string;
  readonly night: string;
  readonly issuedAtS: number;
  readonly body: string;
}
