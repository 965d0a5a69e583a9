/** A crop as growers call it. Where two entries share a name the first one is meant, so families ("kale") go before their members. */
export interface CropWord {
  readonly id: string;
  readonly names: readonly string[];
}
