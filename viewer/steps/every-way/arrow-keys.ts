const arrows: Readonly<Record<string, readonly [across: number, up: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

const still = [0, 0] as const;

/** Where an arrow key points to: steps across and up. */
export const arrowOf = ({ key, ctrlKey, metaKey, altKey }: KeyboardEvent): readonly [across: number, up: number] =>
  ctrlKey || metaKey || altKey ? still : (arrows[key] ?? still);
