/**
 * A crop, or a family of crops, as growers call it. A name that is the id of one entry means that entry, so that the plain
 * word "kale" is the family; a name that several entries claim otherwise is asked back.
 */
export interface CropWord {
  readonly id: string;
  readonly names: readonly string[];
}
