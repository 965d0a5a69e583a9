/** The service keeps what it could not deliver for a day (server source, message date + 86 400 s). */
const KEPT_S = 86_400;
/** Clocks of two machines differ by less. Project estimate. */
const CLOCKS_DIFFER_S = 300;

/** When something was written: by the service's clock; now where that cannot be beside ours (a trial clock), for nobody writes ahead of time. */
export function writtenAtS(serviceS: number | undefined, nowS: number): number {
  if (serviceS === undefined || serviceS < nowS - KEPT_S - CLOCKS_DIFFER_S) return nowS;
  return Math.min(serviceS, nowS);
}
