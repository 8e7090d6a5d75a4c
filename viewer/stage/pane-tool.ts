import { useEffect } from 'preact/hooks';
import type { Touching } from './gestures.ts';
import type { Pane } from './pane.ts';

/**
 * Gives a pane a tool for as long as the step is shown: its presses, and its keys, which come before the pane's own. Both
 * are taken once, and are to look up what is the case themselves.
 */
export function usePaneTool(pane: Pane, made: () => Touching, press: (event: KeyboardEvent) => boolean): void {
  useEffect(() => {
    const letGo = pane.setTouching(made());
    const onKey = (event: KeyboardEvent): void => {
      if (event.target !== pane.element || !press(event)) return;
      event.preventDefault();
      event.stopImmediatePropagation();
    };
    pane.element.addEventListener('keydown', onKey, true);
    return () => {
      letGo();
      pane.element.removeEventListener('keydown', onKey, true);
    };
  }, [pane]);
}
