import type { Scene } from '../src/drawing/scene.ts';
import { Core } from './core.ts';
import type { Reply } from './core.worker.ts';
import { showDrawing, showSwitches } from './show-drawing.ts';
import { words } from './words.ts';

const core = new Core();
const files = new Map<string, string>();
let scene: Scene | null = null;

const part = <T extends HTMLElement>(id: string): T => document.getElementById(id) as T;
const [card, drawing, state, answer] = [part('card'), part('drawing'), part('state'), part('answer')];

part('invitation').textContent = words.invitation;
part('opener-words').textContent = words.open;
part('files').addEventListener('change', ({ target }) => open((target as HTMLInputElement).files));
document.addEventListener('dragover', (event) => event.preventDefault());
document.addEventListener('drop', (event) => {
  event.preventDefault();
  open(event.dataTransfer?.files ?? null);
});
matchMedia('(prefers-color-scheme: dark)').addEventListener('change', show);

/** Files opened before stay, so that a fit and its parts can come one by one. */
async function open(chosen: FileList | null): Promise<void> {
  for (const file of chosen ?? []) files.set(file.name, await file.text());
  const fitFile = [...files.keys()].filter((name) => name.endsWith('.fit.json')).at(-1);
  if (fitFile === undefined) state.textContent = words.noFit;
  else core.ask({ fitFile, files }, take, (why) => fail(words.broke(why)));
}

function take(reply: Reply): void {
  switch (reply.kind) {
    case 'progress': {
      const { step, done, of } = reply.progress;
      state.textContent = words.working(step, done, of);
      return;
    }
    case 'findings':
      fail(reply.text.includes('not among the files opened') ? words.missing : '', reply.text);
      return;
    case 'answer':
      state.textContent = '';
      answer.textContent = reply.text;
      card.dataset.verdict = reply.verdict;
      scene = reply.scene;
      show();
  }
}

function show(): void {
  if (scene === null) return;
  showDrawing(drawing, scene);
  showSwitches(part<HTMLFieldSetElement>('layers'), drawing);
}

/** An answer that no longer belongs to what is open is not left standing. */
function fail(message: string, text = ''): void {
  scene = null;
  state.textContent = message;
  answer.textContent = text;
  delete card.dataset.verdict;
  drawing.replaceChildren();
  part('layers').hidden = true;
}
