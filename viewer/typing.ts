import { useState } from 'preact/hooks';

/** What stands in a field: what is being typed there until it is taken, else its value; the page draws anew meanwhile. */
export function useTyping(value: string) {
  const [typed, setTyped] = useState<string | null>(null);
  return {
    value: typed ?? value,
    onInput: ({ currentTarget }: { readonly currentTarget: HTMLInputElement }): void => setTyped(currentTarget.value),
    /** Called when what was typed has been taken, or is put back. */
    done: (): void => setTyped(null),
  };
}
