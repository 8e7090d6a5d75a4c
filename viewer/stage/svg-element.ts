const svg = 'http://www.w3.org/2000/svg';

export function svgElement(tag: string, attributes: Readonly<Record<string, string | number>> = {}): SVGElement {
  const made = document.createElementNS(svg, tag) as SVGElement;
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, String(value));
  return made;
}

/** One line of text, its base line beginning, middle or end at a point. */
export function svgText(
  text: string,
  { x, y }: { readonly x: number; readonly y: number },
  attributes: Readonly<Record<string, string>> = {},
): SVGElement {
  const made = svgElement('text', { x, y, ...attributes });
  made.textContent = text;
  return made;
}
