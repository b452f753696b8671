/** `use` lines follow files that are moved. */
import { expect, test } from 'vitest';
import { movedUses } from '../../../language-server/features/moved-files.ts';
import { relative, View } from '../../../language-server/features/view.ts';
import { memoryHost } from '../../../language-server/project/project.ts';

const FILES = {
  'shop/press.dowel': 'use "../house.dowel"\nmachine press "press" { }\n',
  'shop/jobs/open.dowel': 'use "../press.dowel"\nprocedure open "O" for press { }\n',
  'house.dowel': 'fluid oil "oil"\n',
};

function moved(from: string, to: string): string[] {
  const host = memoryHost(FILES);
  return movedUses(new View(host), [{ from, to }], Object.keys(FILES)).map(
    ({ file, text }) => `${file}: ${text}`,
  );
}

test('those that use a moved file', () => {
  expect(moved('shop/press.dowel', 'shop/machines/press.dowel')).toEqual([
    'shop/press.dowel: "../../house.dowel"',
    'shop/jobs/open.dowel: "../machines/press.dowel"',
  ]);
});

test('a folder with all that is in it', () => {
  expect(moved('shop', 'workshop/old')).toEqual(['shop/press.dowel: "../../house.dowel"']);
});

test('a file that moves keeps finding what it uses', () => {
  expect(moved('shop/jobs/open.dowel', 'open.dowel')).toEqual(['shop/jobs/open.dowel: "shop/press.dowel"']);
});

test('how one file is named from another', () => {
  expect(relative('a/b.dowel', 'a/c.dowel')).toBe('c.dowel');
  expect(relative('a/b.dowel', 'd/c.dowel')).toBe('../d/c.dowel');
  expect(relative('file:///w/a.dowel', 'file:///w/my%20press.dowel')).toBe('my press.dowel');
});
