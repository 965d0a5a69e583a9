/** The tables, as the query layer sees them. Times are whole epoch seconds, bodies are JSON text. */
import type { Generated } from 'kysely';

export interface GreenhouseVersionTable {
  greenhouseId: string;
  version: number;
  body: string;
  savedAtS: number;
}

export interface ReadingTable {
  id: Generated<number>;
  greenhouseId: string;
  receivedAtS: number;
  validAtS: number;
  place: string;
  statistic: 'now' | 'low' | 'high';
  tempC: number;
  text: string;
  replacedBy: number | null;
  withdrawnAtS: number | null;
}

export interface ActionTable {
  id: Generated<number>;
  greenhouseId: string;
  receivedAtS: number;
  night: string;
  body: string;
  /** 1 or 0: SQLite has no boolean. */
  done: number;
  text: string;
}

export interface WeatherTable {
  placeKey: string;
  issuedAtS: number;
  body: string;
}

export interface AdvisoryTable {
  id: Generated<number>;
  greenhouseId: string;
  night: string;
  issuedAtS: number;
  body: string;
}

export interface Tables {
  greenhouseVersion: GreenhouseVersionTable;
  reading: ReadingTable;
  action: ActionTable;
  weather: WeatherTable;
  advisory: AdvisoryTable;
}
