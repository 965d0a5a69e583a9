// A grower's house is nobody's business: three decimals (about 100 m) decide the weather as well as six do.
const STORED_DECIMALS = 3;
const FINE_COORDINATE = /("(?:latitude|longitude|lat|lon|lng)"\s*:\s*)(-?\d+\.\d{4,}(?:[eE][+-]?\d+)?)/g;

/** The JSON text with every coordinate in it to three decimals; all other bytes stay as they were. */
export function withCoarseCoordinates(json: string): string {
  return json.replace(FINE_COORDINATE, (_whole, key: string, degrees: string) => `${key}${Number(Number(degrees).toFixed(STORED_DECIMALS))}`);
}
