import { expect, it } from 'vitest';
import { changed, startingWith, undone } from '../../../viewer/job/history.ts';

const [first, second, third] = [{ at: 1 }, { at: 2 }, { at: 3 }];

it('changes of one gesture are taken back together', () => {
  const dragged = changed(changed(startingWith(first), second, 'drag'), third, 'drag');
  expect(undone(dragged)?.now).toBe(first);
});

it('a gesture that comes back to where it began leaves nothing to take back', () => {
  const dragged = changed(changed(startingWith(first), second, 'drag'), third, 'drag');
  expect(changed(dragged, first, 'drag')).toEqual(startingWith(first));
});

it('what came before such a gesture can still be taken back', () => {
  const before = changed(startingWith(first), second, 'one');
  const abandoned = changed(changed(before, third, 'two'), second, 'two');
  expect(undone(abandoned)?.now).toBe(first);
});
