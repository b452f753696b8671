/** Links between the reference and its chapter lead somewhere; the list of contents is the list of headings. */
import { expect, test } from 'vitest';
import { CHAPTER, REFERENCE, textOf } from './examples.ts';

const FILES: Readonly<Record<string, string>> = {
  'LANGUAGE.md': textOf(REFERENCE),
  'STATE.md': textOf(CHAPTER),
};

/** As Markdown viewers make them: small letters, hyphens for blanks, no punctuation. */
function anchor(heading: string): string {
  return heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N} -]/gu, '')
    .replaceAll(' ', '-');
}

function prose(markdown: string): string {
  return markdown.replace(/```[\s\S]*?\n```/g, '');
}

function headings(markdown: string, level: string): string[] {
  return [...prose(markdown).matchAll(new RegExp(`^${level} (.+)$`, 'gm'))].map(([, heading]) => heading!);
}

test.each(Object.keys(FILES))('every link of %s leads to a heading that is there', (name) => {
  const links = [...prose(FILES[name]!).matchAll(/\]\(([^)#]*)(?:#([^)]+))?\)/g)];
  expect(links.length).toBeGreaterThan(0);
  const dead = links.filter(([, file, at]) => {
    const target = FILES[file || name];
    return !target || (at && !headings(target, '#{1,4}').some((heading) => anchor(heading) === at));
  });
  expect(dead.map(([link]) => link)).toEqual([]);
});

test('the list of contents is the list of headings', () => {
  const text = FILES['LANGUAGE.md']!;
  const listed = [...text.matchAll(/^- \[(.+)\]\(#.+\)$/gm)].map(([, title]) => title!);
  expect(listed).toEqual(headings(text, '##'));
});

test('no two headings of the reference have one anchor', () => {
  const anchors = headings(FILES['LANGUAGE.md']!, '#{2,4}').map(anchor);
  expect(anchors.filter((one, index) => anchors.indexOf(one) !== index)).toEqual([]);
});
