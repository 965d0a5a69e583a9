declare module 'tz-lookup' {
  /** IANA zone name at a place; throws RangeError for impossible coordinates. */
  export default function tzLookup(latitude: number, longitude: number): string;
}
