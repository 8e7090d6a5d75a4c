/** A unit of length, as builders and files name it. */
export interface LengthUnit {
  readonly name: string;
  readonly mm: number;
}

const unit = (name: string, mm: number): LengthUnit => ({ name, mm });

/** Units that can be asked for by name. */
export const lengthUnits: readonly LengthUnit[] = [
  unit('mm', 1),
  unit('cm', 10),
  unit('m', 1000),
  unit('in', 25.4),
  unit('ft', 304.8),
];

export const unitNamed = (name: string): LengthUnit | null => lengthUnits.find((each) => each.name === name) ?? null;

/** One pixel of a drawing made at so many to the inch. */
export const pixelAt = (perInch: number): LengthUnit => unit(`px at ${perInch} to the inch`, 25.4 / perInch);
