import { render } from 'preact';
import './page.css';
import { App } from './app.ts';
import { Card } from './card.tsx';
import { drawingOf } from './drawing.ts';
import { jobFromFiles } from './job/disk.ts';
import { rolesStyle } from './roles-style.ts';
import { hand } from './steps/mark-out.tsx';
import { wayInOf } from './way-in.ts';

document.adoptedStyleSheets.push(rolesStyle());

const app = new App();
const card = document.getElementById('card') as HTMLElement;
const drawing = drawingOf(app);
document.getElementById('work')?.append(drawing.element, wayInOf(app));

const openFiles = async (files: Iterable<File>): Promise<void> => {
  const opened = await jobFromFiles([...files]);
  if (opened.ok) app.open(opened.value, 'offer-up');
  else app.tell(opened.text);
};

const save = (): void => {
  const { job } = app;
  if (job !== null)
    hand({
      name: `${job.fit.title ?? 'job'}.job.json`,
      mediaType: 'application/json',
      data: JSON.stringify(job, null, 1),
    });
};

const show = (): void => {
  document.body.classList.toggle('has-job', app.job !== null);
  render(<Card app={app} files={{ openFiles, save }} />, card);
};
app.onChange(show);
show();

document.addEventListener('dragover', (event) => event.preventDefault());
document.addEventListener('drop', (event) => {
  event.preventDefault();
  openFiles(event.dataTransfer?.files ?? []);
});
document.addEventListener('keydown', (event) => {
  if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z') return;
  if (event.target instanceof HTMLInputElement) return;
  event.preventDefault();
  if (event.shiftKey) app.redo();
  else app.undo();
});
