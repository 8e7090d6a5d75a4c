/** This page as it was built, without a job and without what has been drawn since. */
export function ownPage(): string {
  const page = document.documentElement.cloneNode(true) as HTMLElement;
  for (const drawn of page.querySelectorAll('#card, #work')) drawn.replaceChildren();
  page.querySelector('script#job')?.remove();
  page.querySelector('body')?.removeAttribute('class');
  page.querySelector('body')?.removeAttribute('data-working');
  return `<!doctype html>\n${page.outerHTML}\n`;
}
