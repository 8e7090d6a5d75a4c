import { type ComponentChild, render } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';

export function useLatest<T>(value: T): { readonly current: T } {
  const ref = useRef(value);
  ref.current = value;
  return ref;
}

/** Keeps something painted in a group of the pane as long as the step is shown. */
export function usePainted(into: SVGGElement, what: ComponentChild): void {
  const group = useRef<SVGGElement | null>(null);
  useLayoutEffect(() => {
    const own = document.createElementNS('http://www.w3.org/2000/svg', 'g');
    into.append(own);
    group.current = own;
    return () => {
      render(null, own);
      own.remove();
    };
  }, [into]);
  useLayoutEffect(() => {
    if (group.current !== null) render(what, group.current);
  });
}
