import { effect } from '@preact/signals';
import { render } from 'preact';
import './page.css';
import { appOf } from './app.ts';
import { Card } from './card.tsx';
import { drawingOf } from './drawing.ts';
import { rolesStyle } from './roles-style.ts';
import { Session } from './session.ts';
import { wayInOf } from './way-in.ts';

document.adoptedStyleSheets.push(rolesStyle());

const app = appOf();
const session = new Session(app);
const card = document.getElementById('card') as HTMLElement;
const drawing = drawingOf(app);
document.getElementById('work')?.append(drawing.element, wayInOf(app));

effect(() => {
  document.body.classList.toggle('has-job', app.job.now.value !== null);
  document.body.toggleAttribute('data-working', app.answers.isWorking.value);
});
render(<Card app={app} session={session} pane={drawing.face} side={drawing.side} />, card);
app.answers.wake();
session.begin();

document.addEventListener('dragover', (event) => event.preventDefault());
document.addEventListener('drop', (event) => {
  event.preventDefault();
  session.openFiles(event.dataTransfer?.files ?? []);
});
document.addEventListener('keydown', (event) => {
  if (!(event.ctrlKey || event.metaKey)) return;
  const key = event.key.toLowerCase();
  const isTyping = event.target instanceof HTMLInputElement && event.target.type === 'text';
  if (key === 's') session.save();
  else if (key === 'z' && !isTyping && event.shiftKey) app.job.redo();
  else if (key === 'z' && !isTyping) app.job.undo();
  else return;
  event.preventDefault();
});
