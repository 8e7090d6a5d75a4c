import { type ComponentChild, render } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { svgElement } from '../../stage/svg-element.ts';

export function useLatest<T>(value: T): { readonly current: T } {
  const ref = useRef(value);
  ref.current = value;
  return ref;
}

/** Keeps something painted in a group of the pane as long as the step is shown. */
export function usePainted(into: SVGGElement, what: ComponentChild): void {
  const group = useRef<SVGElement | null>(null);
  useLayoutEffect(() => {
    const own = svgElement('g');
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
