/** A request as a door sees it. */
export interface Knock {
  /** By its name in small letters. */
  readonly header: (name: string) => string | undefined;
  readonly body: string;
}

/** A path where a service brings what came in. Whoever stands behind it knows nothing of the server. */
export interface Door {
  readonly path: string;
  /** The status to answer with. */
  knock(request: Knock): Promise<number>;
}
