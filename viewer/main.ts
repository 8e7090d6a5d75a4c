import { Core } from './core.ts';
import type { Answer, Reply } from './core.worker.ts';
import { showDrawing, showSwitches } from './show-drawing.ts';
import { words } from './words.ts';

const core = new Core();
const files = new Map<string, string>();
let last: Answer | null = null;

const part = <T extends HTMLElement>(id: string): T => document.getElementById(id) as T;
const [card, drawing, state, report] = [part('card'), part('drawing'), part('state'), part('report')];
// what scrolls must be reachable by key
report.tabIndex = 0;

part('invitation').textContent = words.invitation;
part('opener-words').textContent = words.open;
part('files').addEventListener('change', ({ target }) => open((target as HTMLInputElement).files));
document.addEventListener('dragover', (event) => event.preventDefault());
document.addEventListener('drop', (event) => {
  event.preventDefault();
  open(event.dataTransfer?.files ?? null);
});
matchMedia('(prefers-color-scheme: dark)').addEventListener('change', draw);

/** Files opened before stay, so that a fit and its parts can come one by one. */
async function open(chosen: FileList | null): Promise<void> {
  for (const file of chosen ?? []) files.set(file.name, await file.text());
  const fitFile = [...files.keys()].filter((name) => name.endsWith('.fit.json')).at(-1);
  if (fitFile === undefined) state.textContent = words.noFit;
  else core.ask({ fitFile, files }, take, (why) => clear(words.broke(why)));
}

function take(reply: Reply): void {
  switch (reply.kind) {
    case 'progress': {
      const { step, done, of } = reply.progress;
      state.textContent = words.working(step, done, of);
      return;
    }
    case 'findings':
      clear(reply.text.includes('not among the files opened') ? words.missing : '');
      tell(reply.text);
      return;
    case 'answer':
      show(reply);
  }
}

function show(shown: Answer): void {
  state.textContent = '';
  card.dataset.verdict = shown.verdict;
  part('verdict').textContent = shown.verdictLine;
  part('plan').textContent = shown.planLine;
  tell(shown.text);
  last = shown;
  draw();
}

function draw(): void {
  if (last === null) return;
  showDrawing(drawing, last.scene);
  showSwitches(part<HTMLFieldSetElement>('layers'), drawing);
}

function tell(text: string): void {
  part('answer').textContent = text;
  report.hidden = text === '';
}

/** An answer that no longer belongs to what is open is not left standing. */
function clear(message: string): void {
  last = null;
  state.textContent = message;
  tell('');
  delete card.dataset.verdict;
  for (const id of ['verdict', 'plan']) part(id).textContent = '';
  drawing.replaceChildren();
  part('layers').hidden = true;
}
